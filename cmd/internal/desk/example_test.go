package desk_test

import (
	"fmt"
	"io"
	"net/http/httptest"
	"strings"

	"fencecard/cmd/internal/desk"
	"fencecard/setup/deck"
)

func Example() {
	handler := desk.New(desk.Work{
		Path:   "bench.yaml",
		Sheets: func(w io.Writer, d *deck.Deck) error { _, err := io.WriteString(w, d.Code); return err },
	})
	answer := httptest.NewRecorder()
	handler.ServeHTTP(answer, httptest.NewRequest("POST", "/plan/look", strings.NewReader(`{"text": "unit: furlong\npieces: []\n"}`)))
	fmt.Print(answer.Body)
	// Output: {"faults":[{"line":1,"from":6,"words":"\"furlong\" is no unit; write in or mm"},{"line":2,"from":8,"words":"the list of pieces is empty; write a piece: - piece: front left leg"}]}
}
