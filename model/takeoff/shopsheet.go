package takeoff

import (
	"fmt"

	"stilewright/model/length"
	"stilewright/model/spec"
)

// The side a model leaves out where it states the other under shop.sheet: of the
// 4 ft by 8 ft sheet of the building trade.
var (
	shopWidth  = choice{48 * in, 1220 * mm, "the common sheet's"}
	shopHeight = choice{96 * in, 2440 * mm, "the common sheet's"}
)

// ShopSheet is the largest sheet a model says its shop cuts panels from; it may
// lie either way round. Where the model says nothing of it, stated is false and
// sheets of any size will do.
func ShopSheet(m spec.Spec) (width, height length.Length, stated bool) {
	if m.Shop == nil || m.Shop.Sheet.Width == nil && m.Shop.Sheet.Height == nil {
		return 0, 0, false
	}
	side := func(stated *length.Length, otherwise choice) length.Length {
		switch {
		case stated != nil:
			return *stated
		case m.Units.Unit == length.Inches:
			return otherwise.inch
		}
		return otherwise.metric
	}
	return side(m.Shop.Sheet.Width, shopWidth), side(m.Shop.Sheet.Height, shopHeight), true
}

// A named is a sheet a model names.
type named struct {
	width, height length.Length
	hand          int
}

// namedSheets are the sheets a job names: those of stock.sheet.sizes that its
// shop can lay down, else the shop's own. The same are nested for the shop, so
// that what is bought is what is cut.
func (t *taker) namedSheets(job int) []named {
	m := t.jobs[job].Model
	width, height, stated := ShopSheet(m)
	var kept []named
	for i, s := range m.Stock.Sheet.Sizes {
		w, h := *s.Width, *s.Height
		if stated && (min(w, h) > min(width, height) || max(w, h) > max(width, height)) {
			t.find(job, spec.Warning, fmt.Sprintf("stock.sheet.sizes[%d]", i+1), RuleShopSheet, "a sheet of %v by %v is larger than the shop's, %v by %v: it is not used; have it halved, or state a larger one under shop.sheet", w, h, width, height)
			continue
		}
		kept = append(kept, named{w, h, s.Count})
	}
	if stated && len(kept) == 0 {
		kept = append(kept, named{width: width, height: height})
	}
	return kept
}
