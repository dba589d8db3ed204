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
// 7.5.5). A page for a screen has it as a comment before its last tag.

// Stamp marks a finished document as made for something.
func Stamp(document []byte, of string) []byte {
	at := stampPlace(document)
	if at < 0 {
		return document
	}
	line := stampLine(document, document, of)
	stamped := make([]byte, 0, len(document)+len(line))
	stamped = append(stamped, document[:at]...)
	stamped = append(stamped, line...)
	return append(stamped, document[at:]...)
}

// Stamped reports whether a document was stamped as made for something, and
// stands as it was written.
func Stamped(document []byte, of string) bool {
	at := stampPlace(document)
	from := at - len(stampLine(document, nil, of))
	if from < 0 {
		return false
	}
	before := append(bytes.Clone(document[:from]), document[at:]...)
	return bytes.Equal(document[from:at], stampLine(document, before, of))
}

// isHTML tells a page for a screen from a PDF.
func isHTML(document []byte) bool { return bytes.HasPrefix(document, []byte("<!DOCTYPE html>")) }

// stampPlace is where a document has its stamp, negative for nowhere.
func stampPlace(document []byte) int {
	if isHTML(document) {
		return bytes.LastIndex(document, []byte("</html>"))
	}
	return bytes.LastIndex(document, []byte("startxref"))
}

// stampLine is the stamp for a kind of document that says so much.
func stampLine(kind, document []byte, of string) []byte {
	form := "%% made by fencecard, for %x: %x\n"
	if isHTML(kind) {
		form = "<!-- made by fencecard, for %x: %x -->\n"
	}
	return fmt.Appendf(nil, form, sha256.Sum256([]byte(of)), sha256.Sum256(document))
}
