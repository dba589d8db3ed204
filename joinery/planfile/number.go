package planfile

import (
	"math/big"
	"strings"
)

// number reads a decimal or a fraction without a unit; long ones are refused.
func number(text string) (*big.Rat, bool) {
	const longest = 8
	if len(text) > longest || strings.Trim(text, "0123456789./") != "" {
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

// figure reads a plain decimal.
func figure(text string) (float64, bool) {
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

// figure reads a number above 0 and up to most; 0 where it was not written.
func (f *fields) figure(key string, most float64) float64 {
	text, n, ok := f.scalar(key)
	if !ok {
		return 0
	}
	value, ok := figure(text)
	if !ok || value <= 0 || value > most {
		f.r.fault(n, "write a number above 0, such as "+example(key), "%s cannot be the %s", quoted(text), key)
		return 0
	}
	return value
}
