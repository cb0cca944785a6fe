package lettering

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Fractions are set in the typeface's own figures, and read back as written.
func TestFractions(t *testing.T) {
	for written, set := range map[string]string{
		"59 7/8":               "59 ⁷⁄₈",
		"≈ 11/64":              "~ ¹¹⁄₆₄",
		`1 1/2" = 1'-0"`:       `1 ¹⁄₂" = 1'-0"`,
		"1 3/8 × 30 11/16":     "1 ³⁄₈ × 30 ¹¹⁄₁₆",
		"1/4, 1/2, 3/4":        "¹⁄₄, ¹⁄₂, ³⁄₄",
		"5 × 1/2 (= 2 1/2)":    "5 × ¹⁄₂ (= 2 ¹⁄₂)",
		"bite 11/32.":          "bite ¹¹⁄₃₂.",
		"5/4x6":                "⁵⁄₄x6",
		"24/7/365, a/b, 1/2.5": "24/7/365, a/b, 1/2.5",
	} {
		require.Equal(t, set, Legible(written))
		require.Equal(t, set, Legible(set))
		require.Less(t, Advance(set, 1000), Advance("0"+written, 1000))
	}
	for _, text := range []string{"59 7/8", "1 3/8 × 30 11/16", "1/4, 1/2, 3/4", "and 7/8", "x²"} {
		require.Equal(t, text, Plain(Legible(text)))
	}
}
