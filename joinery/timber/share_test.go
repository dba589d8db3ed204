package timber

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAShareIsReadAsAFraction(t *testing.T) {
	assert.Equal(t, "5/8", Share{5, 8}.String())
	assert.Equal(t, "1", Share{1, 1}.String())
	assert.Equal(t, "2", Share{2, 1}.String())
}
