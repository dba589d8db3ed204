package desk

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/setup/book"
)

// What a maker can mend is answered as such, and what the program or its disk failed
// at as that.
func TestWhoseFaultItIs(t *testing.T) {
	sound, broken := grooved(""), "unit: in\npieces:\n  - piece: board\n"
	status := func(w Work, method, path string, q any) int {
		body, err := json.Marshal(q)
		require.NoError(t, err)
		recorder := httptest.NewRecorder()
		New(w).ServeHTTP(recorder, httptest.NewRequest(method, path, bytes.NewReader(body)))
		assert.NotEmpty(t, recorder.Body.String())
		return recorder.Code
	}
	learn := func(q learnt) func(Work) int {
		return func(w Work) int { return status(w, "POST", "/plan/learn", q) }
	}
	for name, test := range map[string]struct {
		ask  func(Work) int
		want int
	}{
		"why of a plan at fault":    {func(w Work) int { return status(w, "POST", "/plan/why", planText{broken}) }, http.StatusUnprocessableEntity},
		"why of a sound plan":       {func(w Work) int { return status(w, "POST", "/plan/why", planText{sound}) }, http.StatusOK},
		"learnt of a plan at fault": {learn(learnt{planText: planText{broken}, Setup: 1, Width: "1/4"}), http.StatusUnprocessableEntity},
		"no such setup":             {learn(learnt{planText: planText{sound}, Setup: 9, Width: "1/4"}), http.StatusConflict},
		"no width":                  {learn(learnt{planText: planText{sound}, Setup: 1}), http.StatusUnprocessableEntity},
		"a width that is none":      {learn(learnt{planText: planText{sound}, Setup: 1, Width: "wide"}), http.StatusUnprocessableEntity},
		"a width below nothing":     {learn(learnt{planText: planText{sound}, Setup: 1, Width: "-1/4"}), http.StatusUnprocessableEntity},
		"the built-in shop":         {learn(learnt{planText: planText{sound}, Setup: 1, Width: "0.246", Do: theBit}), http.StatusUnprocessableEntity},
		"a plan not saved":          {learn(learnt{planText: planText{sound + "# more\n"}, Setup: 1, Name: "x", Do: theSetup}), http.StatusConflict},
		"no name":                   {learn(learnt{planText: planText{sound}, Setup: 1, Do: theSetup}), http.StatusUnprocessableEntity},
		"a fence that is none":      {learn(learnt{planText: planText{sound}, Setup: 1, Name: "x", Fence: "far", Do: theSetup}), http.StatusUnprocessableEntity},
		"a name that is taken":      {learn(learnt{planText: planText{sound}, Setup: 1, Name: "taken", Do: theSetup}), http.StatusConflict},
		"a disk that is full":       {learn(learnt{planText: planText{sound}, Setup: 1, Name: "x", Do: theSetup}), http.StatusInternalServerError},
		"a file of other letters": {func(w Work) int {
			require.NoError(t, os.WriteFile(w.Path, []byte("\xff"), 0o600))
			return status(w, "PUT", "/plan/text", change{Text: sound})
		}, http.StatusConflict},
		"a plan whose folder is gone": {func(w Work) int {
			w.Path += "/gone/plan.yaml"
			return status(w, "PUT", "/plan/text", change{Text: sound})
		}, http.StatusInternalServerError},
	} {
		w := workOn(t, []byte(sound))
		w.Shelf.Book = func(_ context.Context, e *book.Entry, _ bool) error {
			if e.Name == "taken" {
				return Conflict("there is one")
			}
			return &fs.PathError{Op: "write", Path: "/secret/book.txt", Err: errors.New("no space left on device")}
		}
		assert.Equal(t, test.want, test.ask(w), name)
	}
}
