package paper

import (
	"bytes"
	"crypto/sha256"
	"fmt"
)

// A document may be written over by a newer one of the same plan, and only as
// long as nobody changed it: a reader of PDF that adds a note keeps the words of
// whoever made it. So the stamp is a line of comment that tells what the document
// was made for and the digest of all the rest; before the last word "startxref" a
// comment moves no place that the document refers to (ISO 32000-1, 7.2.3 and
// 7.5.5).

// Stamp marks a finished document as made for something.
func Stamp(pdf []byte, of string) []byte {
	at := bytes.LastIndex(pdf, startxref)
	if at < 0 {
		return pdf
	}
	line := stampLine(pdf, of)
	stamped := make([]byte, 0, len(pdf)+len(line))
	stamped = append(stamped, pdf[:at]...)
	stamped = append(stamped, line...)
	return append(stamped, pdf[at:]...)
}

// Stamped reports whether a document was stamped as made for something, and
// stands as it was written.
func Stamped(pdf []byte, of string) bool {
	at := bytes.LastIndex(pdf, startxref)
	from := at - len(stampLine(nil, of))
	if from < 0 {
		return false
	}
	before := append(bytes.Clone(pdf[:from]), pdf[at:]...)
	return bytes.Equal(pdf[from:at], stampLine(before, of))
}

var startxref = []byte("startxref")

func stampLine(pdf []byte, of string) []byte {
	return fmt.Appendf(nil, "%% made by fencecard, for %x: %x\n", sha256.Sum256([]byte(of)), sha256.Sum256(pdf))
}
