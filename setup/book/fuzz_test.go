package book

import (
	"bytes"
	"strings"
	"testing"
)

// FuzzBook holds what must be true of any text: it is read without panic, its
// faults have their places, a change keeps every other line, and what is
// written is read back.
func FuzzBook(f *testing.F) {
	whole, d := bookOf(f)
	for _, seed := range []string{"", "#", sample, string(whole.Bytes()), strings.ReplaceAll(sample, "\n", "\r\n"),
		strings.ReplaceAll(sample, "    ", "\t"), byteOrderMark + sample, "setup: a\nsetup: a\n", "<<<<<<<\n=======\n", formatLine + " 2\n",
		"setup: x\n  diameter: 1\n  fence to near edge: -1/4\n", "  a: b\nsetup:\n card:\n  size: 1 left-right,,"} {
		f.Add([]byte(seed))
	}
	e := keepAs(f, d, 1, "fuzzed")
	f.Fuzz(func(t *testing.T, data []byte) {
		b, err := Read("book.txt", data)
		if err != nil {
			return
		}
		for _, fault := range b.Damage() {
			if !fault.Known() || fault.Problem == "" || fault.Remedy == "" {
				t.Fatalf("a fault without place or remedy: %+v", fault)
			}
		}
		for _, entry := range b.Entries() {
			entry.Deck()
			entry.Learnt(entry.Shop.Scale)
		}
		if len(data) < 1<<16 {
			found(t, b, d)
		}
		grown, err := b.Put(e, true)
		if err != nil {
			return
		}
		if len(b.Entries()) > len(grown.Entries()) {
			t.Fatalf("a change lost entries: %q", grown.Bytes())
		}
		for _, line := range bytes.Split(data, []byte("\n")) {
			if line = bytes.TrimSpace(line); bytes.HasPrefix(line, []byte("#")) && !bytes.Contains(grown.Bytes(), line) {
				t.Fatalf("a comment is gone: %q", line)
			}
		}
		rest, err := grown.Forget(e.Name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := Read("book.txt", rest.Bytes()); err != nil {
			t.Fatal(err)
		}
	})
}
