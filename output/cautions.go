package output

// caution is one rule of the page of cautions. A warning is of what can cost a
// finger, a notice of what can spoil a piece (the words as ANSI Z535.4 defines
// them; the page claims to comply with nothing).
type caution struct {
	warning bool
	text    string
}

// cautionPage is what holds at every card.
var cautionPage = []caution{
	{true, "The manual of the router and of the table, local rules and licensed practice come first. Where they say otherwise, do as they say. These cards replace neither them nor training at the machine."},
	{true, "Unplug the router before you change a bit, measure at it or set the fence. Turn the bit by hand once before you switch on."},
	{true, "Feed from right to left, against the turn of the bit. Fed the other way the bit pulls the work and the hand with it."},
	{true, "Never put the work between the bit and the fence: the bit takes it and throws it."},
	{true, "Widen a channel only in the order of the cards, the fence moving away from the bit. In the other order the bit climbs."},
	{true, "To drop work onto the bit: clamp a back stop, set the tail end against it, then lower the work, pivoting on that end. Use a bit that cuts across its end, or bore a start hole."},
	{true, "To stop in the work: hold still against the front stop, switch off, and lift when the bit stands."},
	{true, "Keep hands 4 in (100 mm) from the bit. A piece shorter than 12 in (300 mm) goes in a holder or stays part of a longer one. (Common shop rules; no regulator's figure was found.)"},
	{true, "Use feather boards or jigs and push blocks. Close the fence to the bit and cover all but the cut."},
	{true, "Run the bit no faster than the least of its own marked speed, the maker's table and the router allows. Use sharp bits, the shank in to its mark, the collet tight. Stand clear of the line of the work."},
	{true, "Wear eye and ear protection, and a mask with dust collection: wood dust harms the lungs. No gloves, loose sleeves or long loose hair at the machine."},
	{false, "Cut a trial slot in scrap and measure it: bits are seldom the size on the label."},
	{false, "Mark the sides of every piece in pencil before the first cut, and check the three orders against the marks each time."},
	{false, "All pieces at one height, then raise the bit: a pass deeper than the card says burns, breaks bits and tears the wood."},
	{false, "A climb in moisture moves wood: dress all pieces of a set together, and cut them the same day."},
}

// cautions sets the page of cautions.
func (s setter) cautions() []page {
	w := s.frame.W
	body := s.letters(s.grade.body)
	var rows []block
	for _, c := range cautionPage {
		word := "NOTICE"
		if c.warning {
			word = "WARNING"
		}
		side := s.bold(s.grade.body).width("WARNING") + 6
		head := framed(phrase{}.say(s.bold(s.grade.body), word).set(w), 1, thick)
		row := block{}
		row.add(head, 0, 0)
		row.add(phrase{}.say(body, c.text).set(w-side), side, 1)
		rows = append(rows, row)
	}
	return s.pour(func(int) block {
		return phrase{}.say(s.bold(s.grade.title), "Cautions").set(w)
	}, rows, 2.5)
}
