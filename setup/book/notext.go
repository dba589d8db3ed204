package book

import (
	"bytes"
	"unicode/utf8"

	"fencecard/joinery/plantext"
)

// checkText refuses what is no text, before any of it is read.
func checkText(name string, data []byte) error {
	refuse := func(place plantext.Place, problem, remedy string) error {
		place.File = name
		return plantext.Faults{{Place: place, Problem: problem, Remedy: remedy}}
	}
	if len(data) > mostBytes {
		return refuse(plantext.Place{}, "the setup book is larger than 16 MB", "name another file with --book; this is hardly a setup book")
	}
	if plantext.UTF16(data) {
		return refuse(plantext.Place{}, "the setup book is saved as UTF-16", "save it again as plain text in UTF-8")
	}
	if at := bytes.IndexByte(data, 0); at >= 0 {
		return refuse(placeIn(data, at), "there is a zero byte here, so this is no text",
			"is it the file you mean? if so, take the backup beside the book")
	}
	if !utf8.Valid(data) {
		return refuse(placeIn(data, notUTF8(data)), "this letter is not UTF-8",
			"save the file again as plain text in UTF-8; the editor has it set to Latin-1 or Windows-1252")
	}
	return nil
}

// notUTF8 is where the first byte stands that is not UTF-8.
func notUTF8(data []byte) int {
	at := 0
	for at < len(data) {
		r, n := utf8.DecodeRune(data[at:])
		if r == utf8.RuneError && n == 1 {
			break
		}
		at += n
	}
	return at
}

// placeIn is a byte's place in a text whose lines are not known yet.
func placeIn(data []byte, at int) plantext.Place {
	begun := bytes.LastIndexByte(data[:at], '\n') + 1
	line, _, _ := bytes.Cut(data[begun:], []byte{'\n'})
	return plantext.Place{Line: bytes.Count(data[:at], []byte{'\n'}) + 1, Column: utf8.RuneCount(data[begun:at]) + 1,
		Source: string(bytes.TrimSuffix(line, []byte{'\r'}))}
}
