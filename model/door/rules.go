package door

// The rules Resolve holds a model to. Each has its smallest failing model in
// the tests.
const (
	RuleUnknownTrack    = "unknown-track"     // hanging.track names no catalogue row
	RuleUnknownSpecies  = "unknown-species"   // stock.species names no wood
	RuleUnknownSheet    = "unknown-sheet"     // panel.material names no sheet
	RuleUnknownBoard    = "unknown-board"     // stock.board is no nominal size
	RuleScrewGauge      = "screw-gauge"       // no such wood screw
	RuleStockTooThin    = "stock-too-thin"    // planing leaves less than the thickness asked for
	RuleStockTooNarrow  = "stock-too-narrow"  // a stile or rail is wider than the board gives
	RuleStockUnknown    = "size-missing"      // neither size nor stock tells it
	RulePlumb           = "plumb-disagrees"   // widths and plumb contradict one another
	RuleTracks          = "tracks"            // the leaves could not slide
	RuleLeafTooWide     = "leaf-too-wide"     // leaf wider than the opening
	RuleLeafTooNarrow   = "leaf-too-narrow"   // the stiles leave no lite
	RuleLeafTooHigh     = "leaf-too-high"     // leaf higher than head drop and floor allow
	RuleOverlap         = "overlap"           // the leaves do not cover one another
	RuleOverlapTwice    = "overlap-and-width" // both given, and they contradict
	RuleLiteTooLow      = "lite-too-low"      // the rails leave no lite
	RuleLitesDiffer     = "lites-differ"      // equal centres give unequal lites
	RuleRabbetDeep      = "rabbet-too-deep"   // no wood, or too little, in front of the panel
	RuleRabbetWide      = "rabbet-too-wide"   // rabbets of neighbouring lites meet
	RulePanelProud      = "panel-proud"       // panel thicker than its rabbet is deep
	RuleCutter          = "cutter"            // the cutter cannot make the rabbet
	RuleBite            = "bite"              // the panel can slip off its shoulder
	RuleCornerClip      = "corner-clip"       // clip too small to clear the round corner
	RuleCornerRadius    = "corner-radius"     // radius too small to clear it
	RuleCornerDaylight  = "corner-daylight"   // clip so large that one sees past it
	RuleCornerUnused    = "corner-unused"     // a size of another corner treatment than the one chosen
	RuleWasherProud     = "washer-proud"      // washer stands out of the back face
	RuleWasherReach     = "washer-reach"      // washer cannot reach the panel
	RuleWasherScrew     = "washer-screw"      // its screw comes out, meets another, or does not hold
	RuleWasherRoom      = "washer-room"       // no room for a washer on an edge
	RulePocketThickness = "pocket-thickness"  // no pocket screw for this thickness
	RulePocketRoom      = "pocket-room"       // the holes do not fit the rail's end
	RulePocketTip       = "pocket-tip"        // the screw comes out of the stile
	RulePocketShoulder  = "pocket-shoulder"   // the pocket does not fit the thickness
	RuleTrackThickness  = "track-thickness"   // the track does not carry this leaf
	RuleTrackSection    = "track-section"     // the track's sizes contradict one another
	RuleFaceGap         = "face-gap"          // leaves touch as they pass
	RuleFascia          = "fascia"            // the fascia is in the leaf's way
	RuleMass            = "mass"              // the leaf is heavier than the track's rating

	// How a leaf is divided.
	RuleLiteTooNarrow = "lite-too-narrow" // stiles and muntins leave no lite
	RuleLiteCount     = "lite-count"      // rows or columns and a list of their sizes disagree
	RuleLitesTwice    = "lites-twice"     // sizes and a spacing of the lites both stated
	RuleLitesAddUp    = "lites-add-up"    // stated sizes do not add up to what is free
	RuleCrosses       = "crosses"         // not one width for every cross rail

	// Of joints.
	RuleJointUnused = "joint-unused" // a size of another joint than the one chosen
	RuleDowelThick  = "dowel-thick"  // the dowel leaves too little of the thickness
	RuleDowelLength = "dowel-length" // it comes out, meets another, or does not hold
	RuleDowelRoom   = "dowel-room"   // the dowels do not fit the member's end
	RuleTenonThick  = "tenon-thick"  // the tenon leaves too thin cheeks
	RuleTenonLength = "tenon-length" // the mortise comes out or meets another, or does not hold
	RuleTenonRoom   = "tenon-room"   // the tenon does not fit the member's end
	RuleTenonWide   = "tenon-wide"   // so wide that it works loose
	RuleTenonEdge   = "tenon-edge"   // the mortise is too near the stile's end
	RuleTenonGroove = "tenon-groove" // the tenon does not fill the groove
	RuleTenonHaunch = "tenon-haunch" // the groove stays open at the stile's end
	RuleLap         = "lap"          // one half of a half-lap is too thin

	// Of seats, corners and holders.
	RuleSeat        = "seat"         // how far from its face the panel lies is not stated
	RuleSeatTwice   = "seat-twice"   // where the panel lies is said twice, and differs
	RuleSeatUnused  = "seat-unused"  // a size of another seat or holder than the one chosen
	RuleGrooveRun   = "groove-run"   // grooves from end to end of the stiles do not suit panels or joints
	RuleSolidRows   = "solid-rows"   // no such row for the solid panel, or none left for the other
	RuleRelief      = "relief"       // what relieves the corners does not suit seat, member or lite
	RuleHolder      = "holder"       // what is to hold the panels does not suit the seat
	RuleBed         = "bed"          // a bed of sealant too thin to hold alone
	RuleStrip       = "strip"        // a stop or bead, or its pins or screws, do not fit
	RuleStripCorner = "strip-corner" // a round inside corner under a mitred stop or bead
	RuleStripProud  = "strip-proud"  // stops or beads stand in the way of a passing leaf

	// Worked edges, pulls, the guide's groove, hangers.
	RuleEdgeSize    = "edge-size"    // a worked edge takes more wood than there is
	RuleEdgeStop    = "edge-stop"    // a sight edge stops too far from the corner, or too near
	RuleEdgeTwice   = "edge-twice"   // one edge is worked twice
	RuleEdgeMeets   = "edge-meets"   // a worked edge meets a screw or a bore
	RulePullShape   = "pull-shape"   // the pull's sizes do not make a shape
	RulePullDepth   = "pull-depth"   // its mortise leaves too little of the thickness
	RulePullPlace   = "pull-place"   // it does not fit where it is
	RulePullProud   = "pull-proud"   // rims touch as leaves pass
	RuleGuide       = "guide-groove" // the floor guide's groove has no room
	RuleHangerScrew = "hanger-screw" // the top rail does not hold the hangers' screws
	RuleHangerPlace = "hanger-place" // the hangers' screws meet something, or hold little
)
