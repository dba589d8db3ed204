package trade

import "fencecard/setup/deck"

// AlwaysMind is what every run says.
const AlwaysMind = "Unplug before you touch bit or collet. Feed right to left. Eyes, ears, lungs protected; no gloves."

// Deference is said once wherever a deck is written.
const Deference = "The manuals of router, table and bits, local rules and licensed practice come first; where they say otherwise, do as they say. No standard is claimed."

// Everywhere lists the rules that hold at every run, what comes first foremost. Few are
// brief, for small paper.
func Everywhere() []deck.Caution {
	return []deck.Caution{
		{Code: "first", Weight: deck.Grave, Words: Deference,
			Brief: "The manuals of router, table and bits, local rules and licensed practice come first. No standard is claimed.",
			Basis: "EN 848-1, EN 848-2 and EN 847-1 (scopes read) leave a router in a table out"},
		{Code: "unplug", Weight: deck.Grave, Words: "Switch off, let the bit stop and unplug the router before you change the bit, measure at it, raise it or set the fence; then turn it by hand once. Only where a run says so is it raised turning.",
			Basis: BGR100500 + ": set with the tool standing still; the rest: " + CommonPractice},
		{Code: "feed", Weight: deck.Grave, Words: "Feed from right to left, against the turn of the bit. Never pass an edge between bit and fence.",
			Basis: Rotation},
		{Code: "widen", Weight: deck.Grave, Words: "Widen a channel only in the order of the runs, the fence moving away from the bit, or the bit climbs.",
			Basis: Rotation},
		{Code: "guard", Weight: deck.Grave, Words: "Featherboards or jigs, push blocks; fence closed to the bit, all but the cut covered, far from the fence by a guard overhead. Stand clear of the line of the work.",
			Basis: "California Title 8 s. 4296 (read): featherboards or jigs; " + BGR100500 + ": cover all but the cut, close the fence; the rest: " + CommonPractice},
		{Code: "hands", Weight: deck.Grave, Words: "Hands 4 in (100 mm) from the bit; press only on full stock, outside the bit where an end is cut away. Never draw work back over the turning bit. No knots or nails in its path.",
			Basis: WIS18 + ": knots; the draw back: " + Rotation + "; the rest: " + CommonPractice},
		{Code: "speed", Weight: deck.Grave, Words: "No faster than the least of the speeds of bit, diameter and router. Sharp bits, the shank in to its mark, the collet tight.",
			Basis: "29 CFR 1910.213(s)(2) (read): cutters sharp and firmly held; the rest: " + CommonPractice},
		{Code: "protect", Weight: deck.Grave, Words: "Eyes, ears and lungs protected, dust extracted. No gloves, loose sleeves or loose hair.",
			Basis: WoodDust + "; the rest: " + CommonPractice},
		{Code: "orders", Weight: deck.Noted, Words: "Check the three orders against the pencilled marks each time. Cut all pieces of a set the same day: wood moves.",
			Brief: "Cut all pieces of a set the same day: wood moves.", // the orders are at the head of a small run sheet
			Basis: CommonPractice},
	}
}
