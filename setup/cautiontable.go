package setup

// cautionTable is every caution a card may carry, the gravest first. The words
// are our own; what stands behind them is named in the third column. What no
// source was found for is common practice of the trade.
var cautionTable = []struct {
	code   string
	weight Weight
	words  string
	basis  string
	when   func(*situation) bool
}{
	{"start-hole", Grave,
		"This bit is not known to cut across its end. Bore a start hole as wide as the bit and as deep as the cut where the work is dropped on.",
		commonPractice, (*situation).needsStartHole},
	{"start-stopped", Grave,
		"Stopped start: tail end against the back stop clamped on the right first, then lower the work onto the turning bit, pivoting on that stop. Never free-hand.",
		"UK HSE sheet WIS18 (read in part): accidents in stopped work came mainly from working without back stops, jigs or work holders", (*situation).starts},
	{"end-stopped", Grave,
		"Stopped end: hold still at the mark, or against the front stop on the left, switch off, lift when the bit stands.",
		"UK HSE sheet WIS18 (read in part), and common practice", (*situation).stops},
	{"down-cut-blind", Grave,
		"A down-cut bit in a table packs its chips in a blind cut and lifts the work off the table. Use an up-cut or straight bit, or hold the work down with a featherboard and clear the chips at every height.",
		"worked out from the rotation of the bit", (*situation).downCutBlind},
	{"fence-order", Grave,
		"Several fence distances for one channel: move the fence only away from the bit, card by card. The other way the bit climbs and throws the work.",
		"worked out from the rotation of the bit", (*situation).severalDistances},
	{"edge-cut", Grave,
		"Edge cut: bury the bit in the fence and let the edge run along it. Never put the wood between bit and fence.",
		"worked out from the rotation of the bit; California Title 8 s. 4296 asks for featherboards or jigs in rabbeting", (*situation).edgeCut},
	{"hands-near", Grave,
		"Nowhere on this piece can a hand keep {hands} from the bit all the way. Cut the joint in a longer blank, or hold the piece in a jig that rides the fence; push block and featherboard.",
		"common shop rule, yours to change in the shop file: no regulator gives a figure", (*situation).handsNear},
	{"short-piece", Grave,
		"Piece shorter than {short}: cut the joint in a longer blank and saw it off, or use a jig that rides the fence; push block and featherboard, not hands alone.",
		"common shop rule, yours to change in the shop file: no regulator gives a figure", (*situation).shortPiece},
	{"tall-piece", Grave,
		"Tall piece on a narrow bearing: screw a tall facing to the fence and hold the work to it with a featherboard.",
		commonPractice, (*situation).tall},
	{"large-bit", Grave,
		"Bit over {large}: run it at {rpm} at the most.",
		"speeds by diameter: " + commonPractice, (*situation).large},
	{"shank-and-collet", Grave,
		"A collet that differs from the shank by a hair, as 1/2 in from 12 mm, does not hold it: check that this one is for {shank}.",
		commonPractice, (*situation).nearlyOtherCollet},
	{"open-fence", Grave,
		"Under {open} runs along the fence: close the gap at the bit with a one-piece facing, lest a corner catch.",
		"German BGR 100-500 ch. 2.23 (read): close the fence, bridge its gap for short pieces", (*situation).crossesGap},
	{"support", Grave,
		"Work or stop reaches beyond the fence: support the work, and clamp a longer facing or a stop to the table.",
		commonPractice, (*situation).beyondFence},
	{"hard-dust", Grave,
		"The dust of this material is harmful: extract it at the bit and wear a mask.",
		"UK HSE: wood dust limits of 3 mg/m3 for hardwood and mixtures, 5 mg/m3 for softwood, over 8 h", (*situation).harmfulDust},
	{"across-grain", Noted,
		"Across the grain and out of the work: back it up with scrap, or it splits there; guide a narrow end with a mitre gauge or a square block.",
		commonPractice, (*situation).acrossGrain},
	{"passes", Noted,
		"More than one pass: change the height, not the speed of feed, and clear the chips before the next.",
		commonPractice, (*situation).severalPasses},
	{"thin-wall", Noted,
		"Under {wall} of wood is left beside the cut: feed gently, and do not lever the work.",
		commonPractice, (*situation).thinWall},
	{"trial-slot", Noted,
		"First card of the setup: cut a trial slot in scrap, measure its width and place, and only then the first piece.",
		commonPractice, (*situation).firstOfSetup},
}
