package door_test

import (
	"stilewright/model/door"
	"stilewright/model/spec"
)

// jointFaults are models that break one rule of joints; see faults.
var jointFaults = []fault{
	{door.RuleJointUnused, least, "leaf.joint.tenon.length=2", "leaf.joint.tenon.length", spec.Warning, `leaf.joint.tenon.length is stated and the frame is joined by pocket-screw: it is not used; leave it out, or choose another joint`},
	{door.RuleJointUnused, least, "leaf.joint.kind=dowel; leaf.joint.screw=2", "leaf.joint.screw", spec.Warning, `leaf.joint.screw is stated and the frame is joined by dowel: it is not used; leave it out, or choose another joint`},
	{door.RuleDowelThick, least, "leaf.joint.kind=dowel; leaf.joint.dowel.diameter=3/4", "leaf.joint.dowel.diameter", spec.Stops, `a dowel 3/4" thick in a frame 1 3/8" thick leaves 5/16" on each side; it may be half as thick as the frame: up to 11/16"`},
	{door.RuleDowelLength, least, "leaf.joint.kind=dowel; leaf.joint.dowel.length=7 1/2", "leaf.joint.dowel.length", spec.Stops, `dowels 7 1/2" long need holes 3 13/16" deep; SL is 4" that way and keeps 3/16": at least 1/4" must be left; dowels up to 7 3/8" fit`},
	{door.RuleDowelLength, least, "leaf.joint.kind=dowel; leaf.joint.dowel.length=1", "leaf.joint.dowel.length", spec.Warning, `dowels 1/2" thick and 1" long go 1/2" into each part and hold little; 1 1/2" or longer is better`},
	{door.RuleDowelRoom, least, "leaf.joint.kind=dowel; leaf.joint.holes_per_end=4", "leaf.joint", spec.Stops, `4 dowels at each end of R1 need 3" between the panel's seats for their middles; there is 2 1/2": fewer or thinner dowels, or a wider member`},
	{door.RuleDowelRoom, least, "leaf.joint.kind=dowel; leaf.rail=; leaf.rail.top=4; leaf.rail.cross=2; leaf.rail.bottom=4; leaf.lites.rows=2", "leaf.joint", spec.Warning, `rail R2, 2" wide, has room for one dowel 1/2" thick at each end: it can twist; a wider rail or thinner dowels would hold two`},
	{door.RuleTenonThick, least, "leaf.joint.kind=mortise-and-tenon; leaf.joint.tenon.thickness=1 1/4", "leaf.joint.tenon", spec.Stops, `a tenon 1 1/4" thick, 1/16" behind the front of a frame 1 3/8" thick, leaves 1/16" in front and 1/16" behind; each must be at least 1/8": in the middle, tenons up to 1 1/8" fit`},
	{door.RuleTenonThick, least, "leaf.joint.kind=bridle; leaf.joint.tenon.front=1", "leaf.joint.tenon", spec.Stops, `a tenon 1/2" thick, 1" behind the front of a frame 1 3/8" thick, leaves 1" in front and -1/8" behind; each must be at least 1/8": in the middle, tenons up to 1 1/8" fit`},
	{door.RuleTenonLength, least, "leaf.joint.kind=mortise-and-tenon; leaf.joint.tenon.length=3 7/8", "leaf.joint.tenon.length", spec.Stops, `tenons 3 7/8" long need mortises 3 15/16" deep; SL is 4" that way and keeps 1/16": at least 1/4" must be left; tenons up to 3 11/16" fit`},
	{door.RuleTenonLength, least, "leaf.joint.kind=mortise-and-tenon; leaf.joint.tenon.length=3; leaf.joint.tenon.through=yes", "leaf.joint.tenon.length", spec.Stops, `a through tenon 3" long does not end flush with a stile 4" wide: leave its length out, or make it blind`},
	{door.RuleTenonLength, least, "leaf.joint.kind=loose-tenon; leaf.joint.tenon.length=3/8", "leaf.joint.tenon.length", spec.Warning, `a tenon 1/2" thick and 3/8" long holds little; 1/2" or longer is better`},
	{door.RuleTenonRoom, least, "leaf.joint.kind=loose-tenon; leaf.joint.tenon.width=3 1/2", "leaf.joint.tenon.width", spec.Stops, `a loose tenon 3 1/2" wide does not fit R1: clear of the panel's seats and its edges there is 2 3/16"`},
	{door.RuleTenonRoom, least, "leaf.joint.kind=mortise-and-tenon; leaf.joint.tenon.edge=3 3/8", "leaf.joint", spec.Stops, `beside the panel's seats and edge shoulders R1, 4" wide, has 1/8" for a tenon; it needs at least 1/4": a wider member, a thinner tenon or a smaller edge shoulder`},
	{door.RuleTenonWide, least, "leaf.joint.kind=mortise-and-tenon; leaf.joint.tenon.edge=1/2; leaf.rail=; leaf.rail.top=4; leaf.rail.bottom=5 1/2", "leaf.joint", spec.Warning, `the tenon of R1 is 4 1/2" wide; above 4" it swells and shrinks enough to work loose: a larger edge shoulder or a narrower rail`},
	{door.RuleTenonEdge, least, "leaf.joint.kind=mortise-and-tenon; leaf.joint.tenon.edge=1/8", "leaf.joint.tenon.edge", spec.Stops, `1/8" of wood between a mortise and the stile's end shears out; at least 1/4" is needed, or a bridle joint`},
	{door.RuleLap, least, "leaf.joint.kind=half-lap; leaf.joint.lap=1 1/4", "leaf.joint.lap", spec.Stops, `a lap that leaves 1 1/4" in front leaves 1/8" behind of a frame 1 3/8" thick; each needs at least 3/16": from 3/16" to 1 3/16"`},
	{door.RulePocketRoom, least, "leaf.lites.columns=2; leaf.muntin=1 1/4", "leaf.muntin", spec.Stops, `a pocket 3/8" wide does not fit a muntin 1 1/4" wide between its rabbets, 3/8" wide and 1/8" clear: muntins from 1 3/8", or join them by dowels`},
	{door.RulePocketTip, least, "leaf.lites.columns=2; leaf.lites.rows=2; leaf.rail=; leaf.rail.top=4; leaf.rail.cross=2 1/2; leaf.rail.bottom=4", "leaf.joint.screw", spec.Stops, `pocket screws 2 1/2" long go ≈ 1 13/64" into rail R2 from both edges; of its 2 1/2" they leave ≈ 5/64": at least 1/8" is needed`},
	{door.RuleTenonLength, least, "leaf.joint.kind=half-lap; leaf.joint.muntin=mortise-and-tenon; leaf.joint.tenon.length=4; leaf.lites.columns=2", "leaf.joint.tenon.length", spec.Stops, `tenons 4" long need mortises 4 1/16" deep; R1 is 4" that way and keeps -1/16": at least 1/4" must be left; tenons up to 3 11/16" fit`},
	{door.RuleTenonRoom, least, "leaf.joint.kind=half-lap; leaf.joint.muntin=loose-tenon; leaf.muntin=1 1/4; leaf.lites.columns=2", "leaf.joint", spec.Stops, `beside the panel's seats and edge shoulders M1, 1 1/4" wide, has 1/4" for a tenon; it needs at least 1/2": a wider member, a thinner tenon or a smaller edge shoulder`},
	{door.RuleDowelRoom, least, "leaf.joint.kind=half-lap; leaf.joint.muntin=dowel; leaf.muntin=1 1/4; leaf.lites.columns=2", "leaf.joint", spec.Stops, `a dowel 1/2" thick does not fit the end of M1, 1 1/4" wide, clear of the panel's seats and its edges: thinner dowels, or a member of at least 1 1/2"`},
	{door.RuleTenonGroove, grooved, "panel.thickness=1/2; leaf.joint.kind=mortise-and-tenon; leaf.joint.tenon.thickness=3/8", "leaf.joint.tenon", spec.Stops, `the tenon lies from ≈ 1/2" to ≈ 7/8" behind the front and does not fill the groove, ≈ 27/64" to ≈ 15/16", that runs through the stiles: make it at least 33/64" thick, or stop the groove`},
	{door.RuleTenonHaunch, grooved, "leaf.joint.kind=mortise-and-tenon; leaf.joint.tenon.haunch=no", "leaf.joint.tenon.haunch", spec.Warning, `the groove, 9/64" wide and 3/8" deep, runs through the stiles and without a haunch stays open at their ends: leave the haunch, or stop the groove`},
}
