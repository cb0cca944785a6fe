package guide

// Cautions by machine and matter. Common practice, no source; they say where the
// real rules stand.
const (
	sawCaution      = "Saw: its manual first. Guard and riving knife on, push sticks, nobody in line with the blade, no gloves; eyes and ears protected."
	planerCaution   = "Planer: its manual first, also for the shortest and thinnest piece it takes. No loose sleeves or gloves, hands off the board's underside; eyes and ears protected."
	routerCaution   = "Router: its manual first. A speed marked on the cutter governs. Move it so that the cutter pushes back, in passes; let it stop before lifting it. Eyes and ears protected."
	drillCaution    = "Drill: clamp the piece, keep sleeves and hair away, protect the eyes; mind how far the bit comes out."
	chiselCaution   = "Chisel: sharp, both hands behind its edge, the piece clamped."
	dustCaution     = "Dust: extract it where it arises and wear a mask made for it; some woods irritate skin and lungs. Empty bags daily: fine dust burns."
	solventCaution  = "Finishes, fillers, glues: read their data sheets. Air the room, keep flames and sparks away, spread oily rags out to dry outdoors."
	glassCaution    = "Glass: gloves and long sleeves, edges seamed; carry it upright, large pieces by two. Whether safety glazing is required here: ask the local authority."
	plasticCaution  = "Plastic sheet: clamp it flat and feed it slowly; chips fly, so protect the eyes. Keep solvents off it. Whether safety glazing is required here: ask the local authority."
	liftCaution     = "Lifting: two people to a leaf, gloves, feet clear; lean it where it cannot slide."
	overheadCaution = "Drilling into the building: know what wires and pipes run behind. The framing must bear the load: follow local codes and, where they ask for it, a licensed trade. Use a platform, not a chair."
	machineCaution  = "Machine: only who is trained on it runs it. Check the first part of each kind before the others are cut."
)
