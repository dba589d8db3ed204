package deck

// Begin is how a cut begins.
type Begin uint8

// A cut is fed in from the end of the work, or the work is dropped on the bit.
const (
	FeedIn Begin = iota
	Drop
)

// String gives the word of the deck: "feed-in" or "drop".
func (b Begin) String() string {
	if b == Drop {
		return "drop"
	}
	return "feed-in"
}

// End is how a cut ends.
type End uint8

// A cut runs out of the end of the work, or the work is lifted off the bit.
const (
	RunOut End = iota
	Lift
)

// String gives the word of the deck: "run-out" or "lift".
func (e End) String() string {
	if e == Lift {
		return "lift"
	}
	return "run-out"
}
