package measure

// Fine writes a length that may fall between the divisions, such as a
// clearance: as [Scale.Format] where it lies on one or, on a coarser rule in
// fractions, on a 64th of an inch, else rounded to a thousandth of an inch or a
// hundredth of a millimetre, or to the division where that is finer.
func (s Scale) Fine(l Length) string {
	if s.On(l) {
		return s.Format(l)
	}
	if s.fractional() && sixtyFourths.On(l) {
		return sixtyFourths.Format(l) // 17/64, and not 0.266
	}
	fine := Scale{Inches, Inch / 1000}
	if s.Unit == Millimetres {
		fine = Scale{Millimetres, Millimetre / 100}
	}
	if s.Division < fine.Division {
		fine = s
	}
	return fine.Format(fine.Round(l))
}

// Say writes a length as [Scale.Fine] does, with its unit, for a message.
func (s Scale) Say(l Length) string { return s.Fine(l) + " " + s.Unit.String() }
