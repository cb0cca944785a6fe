package spec

import "stilewright/model/length"

// Shop is how the files for a CNC router or a laser are written, and what the
// shop that reads them can do. A model without it gets the files that a common
// shop can make; one with it is held to it.
type Shop struct {
	Release  string         `key:"release" doc:"of the drawing exchange format: r2000, or r12 for old programs" choice:"r2000 r12"`
	Units    string         `key:"units" doc:"unit the files are written in; left out, the model's" choice:"inch millimetre"`
	Kerf     *length.Length `key:"kerf" doc:"width of the beam's or saw's cut through panels: outlines grow and holes shrink by half of it; left out, lines have the finished sizes" above:"0" most:"10"`
	Segments *length.Length `key:"segments" doc:"arcs are written as straight segments that stray no further than this, for readers that know no arcs in polylines; left out, arcs stay arcs" least:"0.005" most:"1"`
	Relief   string         `key:"relief" doc:"of inside corners sharper than the tool is round" choice:"dogbone t-bone none"`
	Marks    string         `key:"marks" doc:"strokes: each part carries its label in single strokes on a layer of its own" choice:"strokes none"`
	Layers   ShopLayers     `key:"layers" doc:"words that layer names begin with"`

	Tool         *length.Length `key:"tool" doc:"diameter of the mill" least:"0.5" most:"50"`
	Reach        *length.Length `key:"reach" doc:"deepest the mill cuts" least:"3" most:"200"`
	InsideRadius *length.Length `key:"inside_radius" doc:"least radius left in an inside corner; left out, half the tool" least:"0" most:"25"`
	LeastFeature *length.Length `key:"least_feature" doc:"narrowest opening that can be cut; left out, the tool" least:"0" most:"50"`
	LeastBore    *length.Length `key:"least_bore" doc:"thinnest drill" least:"0" most:"20"`
	Bridge       *length.Length `key:"bridge" doc:"narrowest wall left standing between two cuts" least:"0" most:"50"`
	HolePercent  int            `key:"hole_percent" doc:"least diameter of a hole cut through, in percent of the thickness" range:"1 1000"`
	Sheet        ShopSize       `key:"sheet" doc:"largest sheet of panel material"`
	Spacing      *length.Length `key:"spacing" doc:"between panels nested on a sheet, and to its edge" least:"0" most:"50"`
	Machine      ShopSize       `key:"machine" doc:"the machine's table"`
}

// ShopSize is the size of a sheet or a table; a part may lie either way round.
type ShopSize struct {
	Width  *length.Length `key:"width" doc:"one side" least:"100" most:"20000"`
	Height *length.Length `key:"height" doc:"the other side" least:"100" most:"20000"`
}

// ShopLayers are the words layers begin with, by operation.
type ShopLayers struct {
	Blank  string `key:"blank" doc:"outline of the piece, to set it by"`
	Cut    string `key:"cut" doc:"outline of the part"`
	Hole   string `key:"hole" doc:"cut through inside the part"`
	Pocket string `key:"pocket" doc:"cleared to a depth"`
	Bore   string `key:"bore" doc:"drilled to a depth"`
	Mark   string `key:"mark" doc:"label in strokes"`
}
