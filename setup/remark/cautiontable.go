package remark

import "fencecard/setup/deck"

// cautionRow is a caution a run may carry. In its words {name} stands for what
// fill puts there.
type cautionRow struct {
	code   string
	weight deck.Weight
	words  string
	brief  string // the same, for small cards
	basis  string
	when   func(*situation) bool
	alone  bool // the run is not to be made, so nothing is said of how
}

const (
	wis18     = "UK HSE sheet WIS18, the issue marked Revised (read in part; a Revision 2 exists)"
	bgr100500 = "German BGR 100-500, ch. 2.23 (read)"
	rotation  = "worked out from the rotation of the bit"
	pivoting  = "worked out from the pivoting; the angle and the distance: " + commonPractice
	shopRule  = "common shop rule, yours to change in the shop file: no regulator gives a figure"
	woodDust  = "UK HSE: wood dust limits of 3 mg/m3 for hardwood and mixtures, 5 mg/m3 for softwood, over 8 h; its page on woodworking on western redcedar"
)

// cautionTable is every caution a run may carry, the gravest first. The words
// are our own; what stands behind them is named last. What no source was found
// for is common practice of the trade.
var cautionTable = []cautionRow{
	{"trapped-wood", deck.Grave,
		"Wood runs between the bit and the fence and may be thrown. Do not make this run: put the open side of the cut at the fence (fence: in the plan), and print the deck anew.",
		"Wood between bit and fence may be thrown: do not run this; put the open side at the fence (fence: in the plan).",
		rotation, (*situation).trapped, true},
	{"cuts-apart", deck.Grave,
		"The last pass cuts the piece apart, and what comes loose beside the turning bit may be thrown. Do not make this run: saw the piece instead, or make the cut shallower.",
		"The last pass cuts the piece apart, and the loose part may be thrown: do not run this; saw it, or make the cut shallower.",
		"worked out from the depth of the cuts", (*situation).cutsApart, true},
	{"steep-drop", deck.Grave,
		"Lowered here, the work tilts {tilt} with {tail} of tail before the bit, and can slip or be snatched. {Ways}.",
		"Tilts {tilt}, {tail} of tail before the bit. Better {outs}.",
		pivoting, (*situation).steepDrop, false},
	{"breaks-out", deck.Grave,
		"Lowered here, the bit meets the wood {early} before the line and breaks out of the end that leads. {Ways}.",
		"The bit breaks out of the leading end as the work comes down. Better {outs}.",
		"worked out from the pivoting", (*situation).breaksOut, false},
	{"start-hole", deck.Grave,
		"This bit is not known to cut across its end: {bore}.",
		"Bit not known to cut across its end: {bore}.",
		commonPractice, (*situation).needsStartHole, false},
	{"bored-start", deck.Grave,
		"{Bore}. Tail against the back stop on the right, then lower the work level, the hole over the turning bit. Never free-hand.",
		"{Bore}. Tail against the back stop, lower level, the hole over the turning bit.",
		commonPractice, (*situation).bored, false},
	{"raised-bit", deck.Grave,
		"Clamp the work to table and fence with the bit below, the line at its edge; then raise the turning bit into it, height by height, clear of hands, and free the work only for the run.",
		"Clamp the work, bit below; raise the turning bit into it, then free it for the run.",
		commonPractice, (*situation).raised, false},
	{"start-stopped", deck.Grave,
		"Stopped start: tail end against the back stop clamped on the right first, then lower the work onto the turning bit, pivoting on that stop. {Stop}. Never free-hand.",
		"Tail end against the back stop on the right, then lower onto the turning bit, pivoting there. {Stop}. Never free-hand.",
		wis18 + ": accidents in stopped work came mainly from working without back stops, jigs or work holders; the stop's height is worked out from the pivoting", (*situation).starts, false},
	{"end-stopped", deck.Grave,
		"Stopped end: hold still {there}, switch off with knee or foot, and lift when the bit stands.",
		"Hold still {there}, switch off, lift when the bit stands.",
		wis18 + ", and common practice", (*situation).stops, false},
	{"guided", deck.Grave,
		"Only {along} rides the fence: push the work with {push}, scrap behind it where the bit comes out. Alone it can turn about the bit and be thrown.",
		"Only {along} along the fence: push it with {push}, scrap behind where the bit comes out.",
		commonPractice, (*situation).guided, false},
	{"nibbled", deck.Grave,
		"Nibbled from the end toward the shoulder, at every height: drawn back, the work has no fence behind it and the bit pulls it in. Hold or clamp it to {push}. The other order climbs.",
		"End first, shoulder last, at every height; hold or clamp the work to {push}: the bit pulls it in.",
		rotation, (*situation).nibbled, false},
	{"swings", deck.Grave,
		"The work reaches {across} out from the fence and rides only {along} of it, so it swings about the bit: carry its free end level with the table, and {square}.",
		"Reaches {across} out, rides only {along} of the fence: carry its free end, {square}.",
		commonPractice, (*situation).swings, false},
	{"comes-through", deck.Grave,
		"The bit comes out of the side that is up, where hands push: fix a backing board there, and keep hands off the line of the cut.",
		"The bit comes out on top: backing board there, hands off the line of the cut.",
		commonPractice, (*situation).comesThrough, false},
	{"down-cut-blind", deck.Grave,
		"A down-cut bit in a table packs its chips in a blind cut and lifts the work off the table. Use an up-cut or straight bit{down}.",
		"A down-cut bit packs chips in a blind cut and lifts the work: up-cut or straight bit{down}.",
		rotation, (*situation).downCutBlind, false},
	{"fence-order", deck.Grave,
		"Several fence distances for one channel: move the fence only away from the bit, setup by setup. The other way the bit climbs and throws the work.",
		"Move the fence only away from the bit, setup by setup, or the bit climbs and throws the work.",
		rotation, (*situation).severalDistances, false},
	{"edge-cut", deck.Grave,
		"Edge cut: {bury}. Let the edge run along the fence. Never put the wood between bit and fence.",
		"{Bury}; never the wood between bit and fence.",
		rotation + "; California Title 8 s. 4296 (read) asks for featherboards or jigs in rabbeting", (*situation).edgeCut, false},
	{"hands-near", deck.Grave,
		"No hand on this piece can keep {hands} from the bit all the way. Cut the joint in a longer blank, or hold the piece in a jig that rides the fence; {hold}.",
		"No hand can keep {hands} from the bit: longer blank, or a jig that rides the fence; {hold}.",
		shopRule, (*situation).handsNear, false},
	{"short-piece", deck.Grave,
		"Piece shorter than {short}: cut the joint in a longer blank and saw it off, or use a jig that rides the fence; {hold}, not hands alone.",
		"Piece under {short}: longer blank, or a jig that rides the fence; {hold}, not hands alone.",
		shopRule, (*situation).shortPiece, false},
	{"tall-piece", deck.Grave,
		"Tall piece on a narrow bearing: screw a tall facing to the fence, and {steady}.",
		"Tall piece: tall facing on the fence; {steady}.",
		commonPractice, (*situation).tall, false},
	{"large-bit", deck.Grave,
		"Bit over {large}: run it slower, {rpm}.",
		"Bit over {large}: {rpm}.",
		"speeds by diameter: " + commonPractice, (*situation).large, false},
	{"shank-and-collet", deck.Grave,
		"A collet that differs from the shank by a hair, as 1/2 in from 12 mm, does not hold it: check that this one is for {shank}.",
		"Check that the collet is for {shank}: one that differs by a hair does not hold.",
		commonPractice, (*situation).nearlyOtherCollet, false},
	{"open-fence", deck.Grave,
		"Under {open} runs along the fence: close the gap at the bit with a one-piece facing, lest a corner catch.",
		"Under {open} along the fence: close the gap at the bit with a one-piece facing.",
		bgr100500 + ": close the fence, bridge its gap for short pieces; the length: " + commonPractice, (*situation).crossesGap, false},
	{"support", deck.Grave,
		"Work or stop reaches beyond the fence or the table: support the work at the height of the table, and clamp a longer facing or a stop where it is wanted.",
		"Reaches beyond fence or table: support the work; longer facing, or a stop on the table.",
		commonPractice, (*situation).beyond, false},
	{"harmful-dust", deck.Grave,
		"{Dust} is harmful: extract it at the bit and wear a mask.",
		"Harmful dust: extract it at the bit, wear a mask.",
		woodDust, (*situation).harmfulDust, false},
	{"dust", deck.Noted,
		"Wood dust harms the lungs, that of softwoods as well: extract it at the bit and wear a mask.",
		"Extract the dust at the bit, wear a mask.",
		woodDust, (*situation).anyDust, false},
	{"across-grain", deck.Noted,
		"Across the grain: put scrap behind where the bit comes out, or the wood splits there.",
		"Across the grain: scrap behind where the bit comes out.",
		commonPractice, (*situation).acrossGrain, false},
	{"early-mouth", deck.Noted,
		"As the work comes down the mouth of the cut begins up to {early} beyond its line, a wedge that squaring to the line leaves: only a shoulder that wide hides it.",
		"The mouth begins up to {early} beyond its line: a shoulder that wide hides it.",
		"worked out from the pivoting", (*situation).earlyMouth, false},
	{"passes", deck.Noted,
		"More than one pass: raise the bit between them, at most {cap} each, and clear the chips. Do not push harder instead.",
		"Raise the bit between passes, at most {cap} each; clear the chips.",
		commonPractice, (*situation).severalPasses, false},
	{"thin-wall", deck.Noted,
		"Only {wall} of wood is left beside the cut: feed gently, and do not lever the work.",
		"Only {wall} of wood beside the cut: feed gently, do not lever.",
		commonPractice, (*situation).thinWall, false},
	{"trial-slot", deck.Noted,
		"First run of the setup: {trial}, and only then the first piece.",
		"{Trial} first.",
		commonPractice, (*situation).firstOfSetup, false},
}
