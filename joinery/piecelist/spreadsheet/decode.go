// Package spreadsheet reads what a spreadsheet saved as text: bytes of any usual
// encoding become rows of tidy cells with their places, whatever stands between
// them. It undoes what spreadsheets and countries do to numbers: the 3/4 taken for a
// day in April, the comma for a point.
package spreadsheet

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"fencecard/joinery/plantext"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
)

// mostBytes is the largest list read: far more than the rows allowed come to.
const mostBytes = 8 << 20

const saveAs = "open it in the spreadsheet, choose Save As and the type CSV, and name that file here"

// magics are the first bytes of files that are no text, and what they are.
var magics = []struct{ first, what string }{
	{"PK\x03\x04", "this is a spreadsheet file, not a list as text"},
	{"\xd0\xcf\x11\xe0", "this is a spreadsheet file of the older kind, not a list as text"},
	{"\x1f\x8b", "this file is packed"},
	{"%PDF", "this is a PDF, not a list as text"},
	{"{\\rtf", "this is a text with layout, not a list as text"},
	{"<?xml", "this is XML, not a list as text"},
	{"<html", "this is a web page, not a list as text"},
	{"<!DOCTYPE", "this is a web page, not a list as text"},
}

// Decode turns the bytes of a list into clean text: UTF-8 with "\n" at the end
// of every line. It reads UTF-8, with and without a mark in front, UTF-16, and
// takes what is neither for Windows-1252.
func Decode(name string, data []byte) (string, error) {
	refuse := func(problem, remedy string) (string, error) {
		return "", plantext.Faults{{Place: plantext.Place{File: name}, Problem: problem, Remedy: remedy}}
	}
	if len(data) > mostBytes {
		return refuse(fmt.Sprintf("the list is larger than %d MB", mostBytes>>20), "check that this is the file you mean")
	}
	for _, m := range magics {
		if bytes.HasPrefix(data, []byte(m.first)) {
			return refuse(m.what, saveAs)
		}
	}
	text, err := decoder(data).Bytes(data)
	if err != nil || !utf8.Valid(text) {
		return refuse("the list is no text that can be read", saveAs+", in UTF-8")
	}
	clean := strings.TrimPrefix(string(text), "\ufeff")
	if strings.Contains(clean, "\r") {
		clean = strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(clean)
	}
	if strings.TrimSpace(clean) == "" {
		return refuse("the list is empty", "write a row of heads, such as name,count,length,width,thickness, and below it a row for each piece")
	}
	if at := strings.IndexFunc(clean, unreadable); at >= 0 {
		f := plantext.Fault{Problem: "there is a character here that no text has", Remedy: saveAs}
		t := plantext.NewText(name, clean)
		f.Place = t.Place(t.Position(at))
		return "", plantext.Faults{f}
	}
	return clean, nil
}

// decoder is that of the encoding the bytes look like.
func decoder(data []byte) *encoding.Decoder {
	switch {
	case plantext.UTF16(data):
		order := unicode.LittleEndian
		if data[0] == 0 || data[0] == 0xfe {
			order = unicode.BigEndian
		}
		return unicode.UTF16(order, unicode.UseBOM).NewDecoder()
	case utf8.Valid(data):
		return encoding.Nop.NewDecoder()
	}
	return charmap.Windows1252.NewDecoder()
}

// unreadable reports whether a character is a sign of a file that is no text.
// The replacement character stands for a byte that Windows-1252 does not have.
func unreadable(r rune) bool {
	return r < ' ' && r != '\t' && r != '\n' || r >= 0x7f && r < 0xa0 || r == utf8.RuneError
}
