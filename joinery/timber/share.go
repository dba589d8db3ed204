package timber

import (
	"fmt"
	"strconv"
)

// Share is a fraction of a bit's diameter, such as 5/8.
type Share struct{ Num, Den int64 }

// String gives the share as a fraction, "5/8", or "1" for the whole.
func (s Share) String() string {
	if s.Den == 1 {
		return strconv.FormatInt(s.Num, 10)
	}
	return fmt.Sprintf("%d/%d", s.Num, s.Den)
}
