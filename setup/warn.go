package setup

// warn gathers the warnings of a deck, in the order of the plan.
func warn(d *Deck) []Warning { return nil }
