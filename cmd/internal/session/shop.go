package session

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/shopfile"
)

// ReadShop reads a shop file, or gives the built-in shop for no name.
func (s *Session) ReadShop(name string, unit measure.Unit) (joinery.Shop, error) {
	if name == "" {
		return shopfile.BuiltIn(unit), nil
	}
	data, err := s.ReadFile(name)
	if err != nil {
		return joinery.Shop{}, err
	}
	return shopfile.Read(name, data, unit)
}
