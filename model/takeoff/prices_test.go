package takeoff

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const priceHead = "item,unit,pack,price\n"

func TestPriceFaults(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", "p.csv:1:1: price-file: the price file is empty; its first row must be item,unit,pack,price"},
		{"thing,price\n", "p.csv:1:1: price-file: the first row is “thing,price”; it must be “item,unit,pack,price”, the last with the coin if wanted"},
		{priceHead + "paint,L,1,-3\n", "p.csv:2:11: bad-price: “-3” is no price; write an amount from 0 to 1000000 with a point and at most two decimals, like 12 or 12.40"},
		{priceHead + "paint,L,1,3.456\n", "p.csv:2:11: bad-price: “3.456” is no price"},
		{priceHead + "paint,L,1,\"3,40\"\n", "p.csv:2:11: bad-price: “3,40” is no price"},
		{priceHead + "paint,L,1,NaN\n", "p.csv:2:11: bad-price: “NaN” is no price"},
		{priceHead + "paint,L,1,1000001\n", "p.csv:2:11: bad-price: “1000001” is no price"},
		{priceHead + "paint,L,0,3\n", "p.csv:2:9: bad-pack: “0” is no number of units in a pack; write one above 0 and up to 100000, like 100 or 0.75"},
		{priceHead + "paint,L,many,3\n", "p.csv:2:9: bad-pack: “many” is no number"},
		{priceHead + "paint,L,3\n", "p.csv:2:1: price-row: the row has 3 fields and the head 4"},
		{priceHead + ",L,1,3\n", "p.csv:2:1: price-row: the price 3 has no item"},
		{priceHead + "paint,L,1,3\n# a word\nPaint ,L,1,4\n", "p.csv:4:1: price-twice: “Paint” has a price in line 2 and another here; keep one"},
		{priceHead + "\"paint,L,1,3\n", "p.csv:2:14: price-file: not CSV"},
		{"\xff\xfe", "p.csv: price-file: the price file is not UTF-8 text"},
		{strings.Repeat("#", LargestPrices+1), "p.csv: price-file: the price file has 1048577 bytes; at most 1048576 are read"},
	} {
		prices, findings := ReadPrices("p.csv", []byte(c.text))
		require.Len(t, findings, 1, "%.60q", c.text)
		require.Contains(t, findings[0].String(), c.want, "%.60q", c.text)
		require.Empty(t, prices.rows)
	}
}

func TestPricesRead(t *testing.T) {
	prices, findings := ReadPrices("p.csv", []byte("\ufeffItem,unit,pack,price USD\n# ours\npaint,L,2.5, 31.4\n floor   Guide,,,2\nglue,L,1,\n"))
	require.Empty(t, findings)
	require.Equal(t, "USD", prices.Coin)
	require.Len(t, prices.rows, 2, "the row without a price is skipped")
	paint, ok := prices.of("Paint")
	require.True(t, ok)
	require.Equal(t, priced{unit: "L", pack: 2.5, price: 3140, line: 3}, paint)
	_, ok = prices.of("floor guide")
	require.True(t, ok)
}

// TestPriced is a list by hand: prices change what is bought. At 9.00 for 8 ft
// and 40.00 for longer ones no long board is worth it.
func TestPriced(t *testing.T) {
	job := samples(t)["attic-linen"]
	prices, findings := ReadPrices("p.csv", []byte(`item,unit,pack,price EUR
board 2x6 ponderosa pine 8 ft,each,,9
board 2x6 ponderosa pine 16 ft,each,,40.50
pocket screw no. 8 x 2 1/2 in,each,25,4.20
floor guide,each,,0.99
`))
	require.Empty(t, findings)
	out := take(t, prices, job)
	costs := map[string]Item{}
	for _, i := range out.Buy {
		costs[i.Name] = i
	}
	// Four stiles take a board of 8 ft each (a second would need 157 7/8 + 1/8
	// of 95); eight rails of 22 11/16 go four to a board: 4 · 22 13/16 = 91 1/4.
	// 6 boards, a tenth to spare is 1 more: 7 · 9.00 = 63.00.
	eight := costs["board 2x6 ponderosa pine 8 ft"]
	require.Equal(t, 7, eight.Buy)
	require.Equal(t, "63.00", Money(eight.Cost))
	// 48 + 5 screws in packs of 25: 3 · 4.20 = 12.60.
	screws := costs["pocket screw No. 8 x 2 1/2 in"]
	require.Equal(t, 3, screws.Buy)
	require.Equal(t, "12.60", Money(screws.Cost))
	require.Equal(t, "76.59", Money(out.Sum.Cost)) // 63.00 + 12.60 + 0.99
	require.Equal(t, "EUR", out.Sum.Coin)
	require.Equal(t, len(out.Buy)-3, out.Sum.Unpriced)
}

func FuzzReadPrices(f *testing.F) {
	f.Add([]byte(priceHead + "paint,L,1,3.40\n"))
	f.Add([]byte("item,unit,pack,price \xce\xa9\n\"a\nb\",,,0\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		prices, findings := ReadPrices("p.csv", text)
		if len(findings) > 0 && len(prices.rows) > 0 {
			t.Fatal("findings and prices")
		}
		for _, finding := range findings {
			if finding.Sentence == "" || finding.Rule == "" {
				t.Fatalf("%#v", finding)
			}
		}
		for item, row := range prices.rows {
			if item == "" || row.price < 0 || row.pack < 0 {
				t.Fatalf("%q: %v", item, row)
			}
		}
	})
}
