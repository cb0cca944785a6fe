package door_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/spec"
)

// A fault is a model that breaks one rule, the least one with a change or two:
// what is changed, the path of the value at fault, and what is said.
type fault struct {
	rule, base, model, at string
	severity              spec.Severity
	says                  string
}

// broken are all the faults.
func broken() []fault { return slices.Concat(faults, jointFaults, seatFaults, workedFaults) }

var faults = []fault{
	{door.RuleUnknownTrack, least, "hanging.track=two-chanel", "hanging.track", spec.Stops, `no track "two-chanel"; did you mean two-channel, two-channel-35 or two-channel-28?`},
	{door.RuleUnknownSpecies, least, "stock.species=ponderossa pine", "stock.species", spec.Stops, `no wood "ponderossa pine"; did you mean ponderosa pine, southern pine or white pine?`},
	{door.RuleUnknownSheet, least, "panel.material=acryllic", "panel.material", spec.Stops, `no sheet material "acryllic"; did you mean acrylic?`},
	{door.RuleUnknownBoard, least, "stock.board=2x13", "stock.board", spec.Stops, `board "2x13": no nominal width "13"; known are 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12`},
	{door.RuleUnknownBoard, least, "stock.board=two by six; leaf.thickness=; leaf.stile=", "stock.board", spec.Stops, `board "two by six" is not thickness x width: write it like 2x6 or 5/4x6`},
	{door.RuleScrewGauge, least, "panel.held_by.screw.gauge=11", "panel.held_by.screw.gauge", spec.Stops, `no wood screw of gauge 11; nearest is 10, known are 2 to 14`},
	{door.RuleStockTooThin, least, "stock.board=2x6; stock.plane=1/8", "leaf.thickness", spec.Stops, `the leaf is to be 1 3/8" thick; a 2x6 planed 1/8" each face gives 1 1/4": plane less, take thicker boards, or leave leaf.thickness out`},
	{door.RuleStockTooThin, least, "leaf.thickness=; stock.board=1x6; stock.plane=1/4", "stock.plane", spec.Stops, `planing 1/4" off each face of a board 3/4" thick leaves 1/4"; a frame needs at least 1/2": plane less or take thicker boards`},
	{door.RuleStockTooNarrow, least, "stock.board=2x4; leaf.rail=3", "leaf.stile", spec.Stops, `a stile is to be 4" wide; a 2x4, 3 1/2" wide and ripped 0" each edge, gives 3 1/2": rip less or take wider boards`},
	{door.RuleStockTooNarrow, least, "stock.board=2x6; leaf.rail=; leaf.rail.top=4; leaf.rail.bottom=6", "leaf.rail.bottom", spec.Stops, `a bottom rail is to be 6" wide; a 2x6, 5 1/2" wide and ripped 0" each edge, gives 5 1/2": rip less or take wider boards`},
	{door.RuleStockTooNarrow, least, "leaf.stile=; leaf.rail=; stock.board=2x4; stock.rip=1 7/8", "stock.rip", spec.Stops, `ripping 1 7/8" off each edge of a board 3 1/2" wide leaves -1/4"; a stile needs at least 13/16": rip less or take wider boards`},
	{door.RuleStockUnknown, least, "leaf.thickness=", "leaf", spec.Stops, `the frame's thickness is not known: state leaf.thickness, or name the board under stock.board`},
	{door.RuleStockUnknown, least, "leaf.stile=; hanging.overlap=stile", "leaf", spec.Stops, `the stiles' width is not known: state leaf.stile, or name the board under stock.board`},
	{door.RuleStockUnknown, least, "leaf.rail=; leaf.rail.top=4", "leaf", spec.Stops, `the bottom rail's width is not known: state leaf.rail.bottom, or name the board under stock.board`},
	{door.RulePlumb, least, "opening.plumb.right=3/16", "opening.plumb.right", spec.Warning, `right jamb is said to lean 3/16"; the widths and the left jamb make it 0", more than 1/8" apart: measure widths and plumb again`},
	{door.RuleTracks, least, "hanging.tracks=[back, back]", "hanging.tracks", spec.Stops, `all 2 leaves hang on the back track, so none could slide past another: put neighbours on front and back in turn`},
	{door.RuleLeafTooWide, least, "leaf.width=61", "leaf.width", spec.Stops, `a leaf is 61" wide; the least usable opening is 60": make leaf or overlap smaller`},
	{door.RuleLeafTooNarrow, least, "leaf.stile=15", "leaf.stile", spec.Stops, `two stiles of 15" in a leaf 30 3/4" wide leave a lite 3/4" wide; it needs at least 2": stiles up to 14 3/8" fit`},
	{door.RuleLeafTooHigh, least, "leaf.height=78", "leaf.height", spec.Stops, `a leaf is to be 78" high; the opening's least height 80" less head drop 1 7/8" and floor gap 3/8" leaves 77 3/4"`},
	{door.RuleLeafTooHigh, least, "opening.height=12; hanging.track.head_drop=11 3/4", "opening.height", spec.Stops, `head drop 11 3/4" and floor gap 3/8" take all of the opening's least height 12"`},
	{door.RuleOverlap, least, "leaf.width=30", "leaf.width", spec.Stops, `leaves 30" wide overlap by 0" and leave the opening of 60" uncovered; 30 1/4" would overlap by 1/2"`},
	{door.RuleOverlap, least, "leaf.width=30; hanging.jamb_gap.left=1/4", "leaf.width", spec.Warning, `the leaves overlap by 1/4"; less than 1/2" lets one see between them`},
	{door.RuleOverlap, least, "hanging.overlap=1/4", "hanging.overlap", spec.Warning, `the leaves overlap by 1/4"; less than 1/2" lets one see between them`},
	{door.RuleOverlap, least, "opening.width=60; hanging.tracks=[back, front, front, back]; hanging.overlap=32", "hanging.overlap", spec.Stops, `the leaves overlap by 32" and are 30 31/32" wide: they would cover one another wholly; ask for a smaller overlap`},
	{door.RuleOverlapTwice, least, "leaf.width=31; hanging.overlap=2", "leaf.width", spec.Stops, `leaf.width 31" and hanging.overlap are both stated, and each follows from the other: leave one of them out`},
	{door.RuleLiteTooLow, least, "leaf.lites.rows=14", "leaf.lites.rows", spec.Stops, `15 rails take 60" of a leaf 77 3/4" high and leave 17 3/4" for the lites, 14 of them; each needs at least 2": fewer rows or narrower rails`},
	{door.RuleLiteTooLow, least, "opening.height=12", "leaf.rail", spec.Stops, `2 rails take 8" of a leaf 9 3/4" high and leave 1 3/4" for the lites, 1 of them; each needs at least 2": fewer rows or narrower rails`},
	{door.RuleLiteTooLow, least, "leaf.rail=; leaf.rail.top=4; leaf.rail.cross=4; leaf.rail.bottom=23; leaf.lites.rows=6; leaf.lites.spacing=equal-centres", "leaf.lites.spacing", spec.Stops, `equal centres leave a lite -2 25/32" high; it needs at least 2": space by equal-lites, or make the rails alike`},
	{door.RuleLitesDiffer, least, "leaf.rail=; leaf.rail.top=4; leaf.rail.cross=3; leaf.rail.bottom=6; leaf.lites.rows=3; leaf.lites.spacing=equal-centres", "leaf.lites.spacing", spec.Warning, `with rail centres evenly apart the lites are 19 3/4" to 21 1/4" high; equal-lites makes them the same`},
	{door.RuleRabbetDeep, least, "panel.rabbet.depth=1 1/4", "panel.rabbet.depth", spec.Stops, `a rabbet 1 1/4" deep in a frame 1 3/8" thick leaves 1/8" of wood in front of the panel; it needs at least 3/16"`},
	{door.RuleRabbetDeep, least, "panel.rabbet.depth=1 3/8", "panel.rabbet.depth", spec.Stops, `a rabbet 1 3/8" deep goes through a frame 1 3/8" thick; leave at least 3/16" in front: up to 1 3/16" deep`},
	{door.RuleRabbetWide, least, "leaf.rail=; leaf.rail.top=4; leaf.rail.cross=1 1/8; leaf.rail.bottom=4; leaf.lites.rows=2; panel.rabbet.width=17/32", "panel.rabbet.width", spec.Stops, `rabbets 17/32" wide on both edges of a cross rail 1 1/8" wide leave 1/16" between them; at least 1/8" is needed: rails from 1 3/16"`},
	{door.RuleRabbetWide, least, "leaf.stile=7/8; panel.rabbet.width=13/16; panel.rabbet.cutter=2", "panel.rabbet.width", spec.Stops, `a rabbet 13/16" wide leaves 1/16" of a member 7/8" wide; at least 1/8" is needed`},
	{door.RulePanelProud, least, "panel.thickness=1/2; panel.rabbet.depth=7/16", "panel.thickness", spec.Stops, `the panel is 1/2" thick and its rabbet 7/16" deep: it would stand out of the back by 1/16"`},
	{door.RuleCutter, least, "panel.rabbet.cutter=3/4", "panel.rabbet.cutter", spec.Stops, `a guided cutter 3/4" across cannot mill a rabbet 3/8" wide: its bearing would be 0"; the cutter must be more than 3/4"`},
	{door.RuleCutter, least, "panel.rabbet.cutter=3 1/2; opening.height=12 3/4", "panel.rabbet.cutter", spec.Stops, `the bearing of a cutter 3 1/2" across is 2 3/4"; the smallest lite side is 2 1/2": take a smaller cutter`},
	{door.RuleCutter, least, "panel.rabbet.per_pass=1/128", "panel.rabbet.per_pass", spec.Stops, `a rabbet 3/4" deep cut ≈ 1/64" at a time takes 96 passes; up to 50 are planned: cut at least 1/32" at a time`},
	{door.RuleBite, least, "panel.edge_gap=3/16", "panel.edge_gap", spec.Stops, `pushed to one side the panel keeps 0" on a shoulder 3/8" wide with an edge gap of 3/16": it falls out; the gap must be under 3/16"`},
	{door.RuleBite, least, "panel.edge_gap=3/32", "panel.edge_gap", spec.Warning, `pushed to one side the panel keeps a bite of 3/16"; acrylic wants 1/4"`},
	{door.RuleCornerClip, least, "panel.edge_gap=1/16; panel.corner.kind=clipped; panel.corner.leg=1/4", "panel.corner.leg", spec.Stops, `a clip of 1/4" does not clear the cutter's corner of radius 5/8" with an edge gap of 1/16"; the smallest that does is 5/16"`},
	{door.RuleCornerClip, least, "panel.rabbet.width=1 1/4; panel.rabbet.cutter=3 1/2; opening.height=12 1/4; panel.corner.kind=clipped; panel.corner.leg=2 1/4", "panel.corner", spec.Stops, `the corners of a panel 25 1/8" by 4 3/8" would meet: 2 1/4" are taken off each`},
	{door.RuleCornerRadius, least, "panel.edge_gap=1/16; panel.corner.kind=rounded; panel.corner.radius=3/8", "panel.corner.radius", spec.Stops, `a corner radius of 3/8" does not clear the cutter's corner of radius 5/8" with an edge gap of 1/16"; the smallest that does is 7/16"`},
	{door.RuleCornerDaylight, least, "panel.edge_gap=1/16; panel.corner.kind=clipped; panel.corner.leg=11/16", "panel.corner", spec.Stops, `a clip of 11/16" reaches past the shoulder: with a bite of 5/16" daylight shows beyond 5/8"; square the corners, take a smaller cutter or a wider rabbet`},
	{door.RuleCornerDaylight, least, "panel.edge_gap=1/16; panel.corner.kind=rounded; panel.corner.radius=1 1/8", "panel.corner.radius", spec.Stops, `a corner radius of 1 1/8" reaches past the shoulder: with a bite of 5/16" daylight shows beyond ≈ 1 1/16"; square the corners, take a smaller cutter or a wider rabbet`},
	{door.RuleCornerDaylight, least, "panel.edge_gap=1/16; panel.corner=rounded; panel.rabbet.cutter=2 1/2", "panel.corner", spec.Stops, `a corner radius of 1 3/16" reaches past the shoulder: with a bite of 5/16" daylight shows beyond ≈ 1 1/16"; square the corners, take a smaller cutter or a wider rabbet`},
	{door.RuleCornerUnused, least, "panel.corner.kind=squared; panel.corner.leg=1/2", "panel.corner.leg", spec.Warning, `a clip of 1/2" is stated and the corners are squared: it is not used; leave it out, or choose clipped`},
	{door.RuleCornerUnused, least, "panel.corner.kind=clipped; panel.corner.radius=1/2", "panel.corner.radius", spec.Warning, `a radius of 1/2" is stated and the corners are clipped: it is not used; leave it out, or choose rounded`},
	{door.RuleWasherProud, least, "panel.held_by.washer.outside=11/16", "panel.held_by.washer.outside", spec.Stops, `a washer 11/16" across on the panel's back ends 1 7/16" from the front of a frame 1 3/8" thick: it stands out by 1/16"; up to 5/8" fits`},
	{door.RuleWasherReach, least, "panel.edge_gap=1/16; panel.held_by.washer.thickness=1/8", "panel.held_by.washer.thickness", spec.Stops, `a washer 1/8" thick on the rabbet wall cannot reach a panel that may stand 1/8" away (twice the edge gap of 1/16"); it must be thicker than that: 5/32" laps it by 1/32"`},
	{door.RuleWasherReach, least, "panel.edge_gap=1/16; panel.held_by.washer.thickness=9/64", "panel.held_by.washer.thickness", spec.Warning, `with the panel pushed away the washer laps it by 1/64"; 1/32" is safer`},
	{door.RuleWasherScrew, least, "panel.held_by.screw.length=1/4", "panel.held_by.screw.length", spec.Stops, `a screw 1/4" long through a washer 5/32" thick holds 3/32" in the wood; it needs at least 1/4"`},
	{door.RuleWasherScrew, least, "panel.held_by.screw.length=3 3/4; leaf.rail=5", "panel.held_by.screw.length", spec.Stops, `a screw 3 19/32" into a stile with 3 5/8" behind the rabbet wall leaves 1/32" at its outer edge; at least 1/8" is needed`},
	{door.RuleWasherScrew, least, "panel.held_by.screw.length=2; leaf.lites.rows=2; panel.held_by.stagger=no; panel.edge_gap=1/16; panel.held_by.washer.thickness=3/16", "panel.held_by.screw.length", spec.Stops, `washer screws going 1 13/16" into rail R2, 4" wide, leave -3/8" between tip and tip or edge; at least 1/8" is needed: screws up to 1 3/4"`},
	{door.RuleWasherScrew, least, "panel.held_by.washer.outside=1/4; panel.held_by.washer.hole=1/4", "panel.held_by.washer", spec.Stops, `a hole of 1/4" leaves nothing of a washer 1/4" across: take a larger washer or a smaller screw`},
	{door.RuleWasherScrew, least, "panel.held_by.washer.hole=1/8", "panel.held_by.washer.hole", spec.Stops, `a screw ≈ 9/64" thick does not go through a washer's hole of 1/8": take a larger hole or a smaller screw`},
	{door.RuleWasherRoom, least, "opening.width=18 1/2; leaf.stile=1 1/2; hanging.hangers.apart=0", "panel.held_by", spec.Warning, `rail edges 7" long have no room for washers between the pocket holes; the panel is held along the stiles only`},
	{door.RuleWasherRoom, least, "leaf.stile=11 7/8; opening.height=13 1/4; panel.rabbet.width=11/16; panel.rabbet.depth=1 1/8; panel.rabbet.cutter=3 1/2; panel.held_by.washer.outside=1", "panel.held_by", spec.Stops, `no washer finds room on any edge of a lite 7" by 3"`},
	{door.RulePocketThickness, metric, "leaf.thickness=12; panel.rabbet.depth=7; hanging.track.spacing=30", "leaf.joint", spec.Stops, `no pocket screw for stock 12 mm thick; the table goes from 12.7 to 50.8 mm: state the screw's length`},
	{door.RulePocketRoom, least, "leaf.joint.holes_per_end=8", "leaf.joint", spec.Stops, `8 pocket holes at each end of rail R1 need 4 3/8" between the rabbets; there is 2 11/16" for their centres: fewer holes or a wider rail`},
	{door.RulePocketRoom, least, "leaf.stile=13", "leaf.joint", spec.Stops, `pockets reach ≈ 3 19/64" from both ends of rails 4 3/4" long and meet; the rails must be at least 6 19/32"`},
	{door.RulePocketTip, least, "leaf.stile=1 1/4", "leaf.joint.screw", spec.Stops, `a pocket screw 2 1/2" long goes ≈ 1 13/64" into a stile 1 1/4" wide and leaves ≈ 3/64"; at least 1/8" is needed`},
	{door.RulePocketShoulder, metric, "leaf.thickness=19; leaf.joint.screw=45; hanging.track.spacing=30", "leaf.joint.screw", spec.Stops, `with a screw of 45 mm the pocket's floor lies ≈ 19.9 mm from the front of a rail 19 mm thick: the pocket is open at its floor and the screw head has no seat; take a shorter screw`},
	{door.RuleTrackThickness, least, "hanging.track=two-channel; leaf.thickness=1; panel.held_by.washer.outside=3/8", "hanging.track", spec.Warning, `a leaf 1" thick is outside the 1 1/4" to 1 3/8" a two-channel track carries: take another row, or state your own track's sizes`},
	{door.RuleTrackSection, least, "hanging.track.depth=1 3/4", "hanging.track", spec.Stops, `channels 1 3/4" apart do not fit a track 1 3/4" deep: its depth must be more than its spacing`},
	{door.RuleTrackSection, least, "hanging.track.head_drop=1 3/8", "hanging.track", spec.Stops, `the leaves hang 1 3/8" below the head and the track is 1 1/2" high: their tops would stand in the track; the head drop must be at least 1 1/2"`},
	{door.RuleFaceGap, least, "hanging.track.spacing=1 3/8", "hanging.track", spec.Stops, `channels 1 3/8" apart leave leaves 1 3/8" thick a face gap of 0": the leaves would touch; a spacing of 1 5/8" leaves 1/4"`},
	{door.RuleFaceGap, least, "hanging.track.spacing=1 7/16", "hanging.track", spec.Warning, `the face gap is 1/16"; passing leaves want at least 1/8"`},
	{door.RuleFascia, least, "hanging.fascia.height=4; hanging.fascia.thickness=3/4; hanging.track.setback=3/4; hanging.track.depth=3 1/8", "hanging.fascia", spec.Stops, `the fascia is 3/4" thick and hangs 4" below the head, before a front leaf whose face is 3/4" behind the opening's front; 1/8" must be left between: set the track back by 1/8" more`},
	{door.RuleFascia, least, "hanging.fascia.height=1 1/4; hanging.fascia.thickness=3/4", "hanging.fascia.height", spec.Warning, `the fascia is 1 1/4" high and the track 1 1/2": the track shows below it`},
	{door.RuleFascia, least, "hanging.fascia.height=1 3/4; hanging.fascia.thickness=3/4; hanging.track.setback=1/2", "hanging.track.setback", spec.Stops, `the track begins 1/2" behind the opening's front and the fascia is 3/4" thick: they stand in one another; set the track back by at least 3/4"`},
	{door.RuleMass, metric, "opening.width=2400; panel.material=glass; panel.thickness=8; panel.held_by.washer.outside=10", "hanging.track", spec.Warning, `a leaf weighs 45.2 kg and a typical two-channel-35 track is rated for 35.0 kg: take a heavier track, and its maker's figures over ours`},
	// How a leaf is divided. A least leaf is 30 3/4 by 77 3/4.
	{door.RuleLiteTooNarrow, least, "leaf.lites.columns=8; leaf.muntin=2", "leaf.lites.columns", spec.Stops, `two stiles and 7 muntins take 22" of a leaf 30 3/4" wide and leave 8 3/4" for the lites, 8 of them; each needs at least 2": fewer columns or narrower muntins`},
	{door.RuleLiteTooNarrow, least, "leaf.lites.widths=[1, rest]", "leaf.lites.widths[1]", spec.Stops, `a lite is to be 1" wide; it needs at least 2"`},
	{door.RuleLiteTooNarrow, least, "leaf.lites.widths=[rest, 17, rest]", "leaf.lites.widths", spec.Stops, `the stated widths add up to 17" and two stiles and 2 muntins leave 18 3/4"; the rest of the lites, 2 of them, need 4": state at least 2 1/4" less, or have fewer columns or narrower muntins`},
	{door.RuleLiteTooNarrow, least, "leaf.stile=6; leaf.muntin=2; leaf.lites.columns=5; leaf.lites.across=equal-centres", "leaf.lites.across", spec.Stops, `equal centres leave a lite 31/32" wide; it needs at least 2": space by equal-lites, or make the stiles and muntins alike`},
	{door.RuleLiteTooLow, least, "leaf.lites.heights=[30, 1 1/2, rest]", "leaf.lites.heights[2]", spec.Stops, `a lite is to be 1 1/2" high; it needs at least 2"`},
	{door.RuleLiteTooLow, least, "leaf.lites.heights=[rest, 63, rest]", "leaf.lites.heights", spec.Stops, `the stated heights add up to 63" and 4 rails leave 61 3/4"; the rest of the lites, 2 of them, need 4": state at least 5 1/4" less, or have fewer rows or narrower rails`},
	{door.RuleLiteTooLow, least, "leaf.crosses=[23, 23, 23]", "leaf.crosses", spec.Stops, `5 rails take 77" of a leaf 77 3/4" high and leave 3/4" for the lites, 4 of them; each needs at least 2": fewer rows or narrower rails`},
	{door.RuleLitesDiffer, least, "leaf.lites.columns=3; leaf.lites.across=equal-centres", "leaf.lites.across", spec.Warning, `with stile and muntin centres evenly apart the lites are 5 29/32" to 6 15/16" wide; equal-lites makes them the same`},
	{door.RuleLiteCount, least, "leaf.lites.rows=3; leaf.lites.heights=[20, rest]", "leaf.lites.heights", spec.Stops, `leaf.lites.rows is 3 and leaf.lites.heights lists 2 sizes: list 3, or leave rows out`},
	{door.RuleLiteCount, least, "leaf.lites.columns=3; leaf.lites.widths=[10, rest]", "leaf.lites.widths", spec.Stops, `leaf.lites.columns is 3 and leaf.lites.widths lists 2 sizes: list 3, or leave columns out`},
	{door.RuleLitesTwice, least, "leaf.lites.heights=[20, rest]; leaf.lites.spacing=equal-lites", "leaf.lites.spacing", spec.Stops, `leaf.lites.heights lists 2 heights and leaf.lites.spacing says equal-lites; each tells how high the lites are: leave one of them out`},
	{door.RuleLitesTwice, least, "leaf.lites.widths=[10, rest]; leaf.lites.across=equal-centres", "leaf.lites.across", spec.Stops, `leaf.lites.widths lists 2 widths and leaf.lites.across says equal-centres; each tells how wide the lites are: leave one of them out`},
	{door.RuleLitesAddUp, least, "leaf.lites.heights=[30, 35]", "leaf.lites.heights", spec.Stops, `the lites' heights add up to 65"; 3 rails leave 65 3/4" of a leaf 77 3/4" high: make them 3/4" more, or write rest for one`},
	{door.RuleLitesAddUp, least, "leaf.lites.widths=[10, 11]", "leaf.lites.widths", spec.Stops, `the lites' widths add up to 21"; two stiles and a muntin leave 20 3/4" of a leaf 30 3/4" wide: make them 1/4" less, or write rest for one`},
	{door.RuleCrosses, least, "leaf.lites.rows=4; leaf.crosses=[3, 5]", "leaf.crosses", spec.Stops, `leaf.crosses lists 2 cross rails; 4 rows of lites have 3 between them: list 3, or make it 3 rows`},
	{door.RuleStockTooNarrow, least, "stock.board=2x6; leaf.crosses=[8]", "leaf.crosses[1]", spec.Stops, `a cross rail is to be 8" wide; a 2x6, 5 1/2" wide and ripped 0" each edge, gives 5 1/2": rip less or take wider boards`},
	{door.RuleStockTooNarrow, least, "stock.board=2x6; leaf.lites.columns=2; leaf.muntin=6", "leaf.muntin", spec.Stops, `a muntin is to be 6" wide; a 2x6, 5 1/2" wide and ripped 0" each edge, gives 5 1/2": rip less or take wider boards`},
	{door.RuleRabbetWide, least, "leaf.lites.columns=2; leaf.muntin=3/4", "panel.rabbet.width", spec.Stops, `rabbets 3/8" wide on both edges of a muntin 3/4" wide leave 0" between them; at least 1/8" is needed: muntins from 7/8"`},
	{door.RuleCutter, least, "leaf.lites.widths=[rest, 2]; panel.rabbet.cutter=2 7/8", "panel.rabbet.cutter", spec.Stops, `the bearing of a cutter 2 7/8" across is 2 1/8"; the smallest lite side is 2": take a smaller cutter`},
	{door.RuleWasherScrew, least, "leaf.lites.columns=2; leaf.muntin=1 3/4; panel.held_by.stagger=no", "panel.held_by.screw.length", spec.Stops, `washer screws going 15/32" into muntin M1, 1 3/4" wide, leave 1/16" between tip and tip or edge; at least 1/8" is needed: screws up to 19/32"`},
	{door.RulePocketRoom, least, "leaf.lites.columns=2; leaf.lites.heights=[6, rest]", "leaf.joint", spec.Stops, `pockets reach ≈ 3 19/64" from both ends of muntins 6" long and meet; the muntins must be at least 6 19/32"`},
}

func TestRules(t *testing.T) {
	for _, c := range broken() {
		x := written(c.base, c.model)
		set, findings := door.Resolve(x.spec(t))
		if !assertOne(t, findings, c.rule, c.model) {
			continue
		}
		found := findings[0]
		if found.Sentence != c.says {
			t.Errorf("%s:\n want %s\n said %s", c.model, c.says, found.Sentence)
		}
		require.Equal(t, c.severity, found.Severity, c.model)
		if at := x.nearest(c.at); found.Line != at[0] || found.Column != at[1] || x.nearest(found.Path) != at {
			t.Errorf("%s: %v stands at %v, not at %s", c.model, found, at, c.at)
		}
		if c.severity == spec.Stops {
			require.Equal(t, door.Set{}, set, c.model)
		} else {
			require.NotEmpty(t, set.Hung, c.model)
		}
	}
}

// assertOne tells whether just one finding was made, of the rule.
func assertOne(t *testing.T, findings []spec.Finding, rule, model string) bool {
	t.Helper()
	if len(findings) == 1 && findings[0].Rule == rule {
		return true
	}
	text := fmt.Sprintf("%s: %s: want one finding, got %d:", rule, model, len(findings))
	for _, f := range findings {
		text += "\n\t" + f.String()
	}
	t.Error(text)
	return false
}

// Every rule has its failing model, and every constant of rules.go is one.
func TestEveryRuleHasAModel(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "rules.go", nil, 0)
	require.NoError(t, err)
	tried, rules := map[string]bool{}, 0
	for _, c := range broken() {
		tried[c.rule] = true
	}
	ast.Inspect(file, func(n ast.Node) bool {
		if value, is := n.(*ast.ValueSpec); is {
			rule, err := strconv.Unquote(value.Values[0].(*ast.BasicLit).Value)
			require.NoError(t, err)
			require.True(t, tried[rule], "%s has no failing model", rule)
			rules++
		}
		return true
	})
	require.Len(t, tried, rules)
}
