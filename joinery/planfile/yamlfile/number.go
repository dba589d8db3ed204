package yamlfile

import (
	"math/big"
	"strings"

	"fencecard/joinery/planfile/keys"
)

// Number reads a decimal or a fraction without a unit; long ones are refused.
func Number(text string) (*big.Rat, bool) {
	const longest = 8
	if len(text) > longest || strings.Trim(text, "0123456789./") != "" || strings.Count(text, "/") > 1 {
		return nil, false
	}
	// Each part by itself: in a fraction big.Rat takes 010 for octal.
	num, den, fraction := strings.Cut(text, "/")
	above, ok := new(big.Rat).SetString(num)
	if !ok || !fraction {
		return above, ok
	}
	below, ok := new(big.Rat).SetString(den)
	if !ok || below.Sign() == 0 {
		return nil, false
	}
	return above.Quo(above, below), true
}

// Figure reads a plain decimal.
func Figure(text string) (float64, bool) {
	const longest = 10
	if text == "" || len(text) > longest || strings.Trim(text, "0123456789.") != "" {
		return 0, false
	}
	number, ok := new(big.Rat).SetString(text)
	if !ok {
		return 0, false
	}
	value, _ := number.Float64()
	return value, true
}

// Figure reads a number above 0 and up to most; 0 where it was not written.
func (f *Fields) Figure(key string, most float64) float64 {
	text, n, ok := f.Scalar(key)
	if !ok {
		return 0
	}
	value, ok := Figure(text)
	if !ok || value <= 0 || value > most {
		f.File.Fault(n, "write a number above 0, such as "+keys.Example(key), "%s cannot be the %s", Quoted(text), key)
		return 0
	}
	return value
}
