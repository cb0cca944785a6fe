package door

import (
	"stilewright/model/catalog"
	"stilewright/model/length"
)

// stock resolves the board, and from it thickness and stile width where the
// model leaves those out.
func (r *resolver) stock() {
	if r.model.Stock.Board != "" && !r.board() {
		return
	}
	r.thickness()
	r.stile()
}

// board resolves the nominal board and what planing and ripping take off it;
// it tells whether there is such a board.
func (r *resolver) board() bool {
	s, stock := r.model.Stock, &r.set.Stock
	nominal, err := catalog.ParseBoard(s.Board)
	if err != nil {
		r.stop("stock.board", RuleUnknownBoard, "%v", err)
		return false
	}
	season := catalog.Dry
	if s.Season == "green" {
		season = catalog.Green
	}
	stock.Board = nominal.String()
	if stock.Dressed, err = catalog.Dressed(nominal, season); err != nil {
		r.stop("stock.board", RuleUnknownBoard, "%v", err)
		return false
	}
	r.assume("stock.dressed.thickness", stock.Dressed.Thickness, "dressed size of a "+stock.Board+", "+season.String(), dressedSource(nominal.Thickness, season))
	r.assume("stock.dressed.width", stock.Dressed.Width, "dressed size of a "+stock.Board+", "+season.String(), dressedSource(nominal.Width, season))
	stock.Plane = r.sized("stock.plane", "stock.plane", s.Plane, choice{reason: "boards used as dressed, not planed"})
	if s.Rip != nil {
		stock.Rip = r.given("stock.rip", "stock.rip", *s.Rip)
	}
	if least := leastMember.in(r.units); r.ripped() < least {
		r.stop("stock.rip", RuleStockTooNarrow, "ripping %v off each edge of a board %v wide leaves %v; a stile needs at least %v: rip less or take wider boards", stock.Rip, stock.Dressed.Width, r.ripped(), least)
	}
	return true
}

// dressedSource is where a dressed size comes from.
func dressedSource(size catalog.NominalSize, season catalog.Season) string {
	if season == catalog.Green {
		return size.GreenSource.String()
	}
	return size.DrySource.String()
}

// thickness resolves the frame's thickness.
func (r *resolver) thickness() {
	stock, stated := r.set.Stock, r.model.Leaf.Thickness
	planed := stock.Dressed.Thickness - 2*stock.Plane
	switch {
	case stated == nil && stock.Board == "":
		r.stop("leaf", RuleStockUnknown, "the frame's thickness is not known: state leaf.thickness, or name the board under stock.board")
	case stated == nil:
		r.derive("leaf.thickness", planed, "dressed thickness less what is planed off both faces", "stock.dressed.thickness", "stock.plane")
		if least := leastThickness.in(r.units); planed < least {
			r.stop("stock.plane", RuleStockTooThin, "planing %v off each face of a board %v thick leaves %v; a frame needs at least %v: plane less or take thicker boards", stock.Plane, stock.Dressed.Thickness, planed, least)
			return
		}
		r.set.Leaf.Thickness = planed
	default:
		r.set.Leaf.Thickness = r.given("leaf.thickness", "leaf.thickness", *stated)
		if stock.Board != "" && *stated > planed {
			r.stop("leaf.thickness", RuleStockTooThin, "the leaf is to be %v thick; a %v planed %v each face gives %v: plane less, take thicker boards, or leave leaf.thickness out", *stated, stock.Board, stock.Plane, planed)
		}
	}
}

// stile resolves the stiles' width.
func (r *resolver) stile() {
	stated := r.model.Leaf.Stile
	switch {
	case stated != nil:
		r.set.Leaf.Stile = r.given("leaf.stile", "leaf.stile", *stated)
		r.fromBoard("leaf.stile", "stile", *stated)
	case r.set.Stock.Board != "":
		r.set.Leaf.Stile = r.derive("leaf.stile", r.ripped(), "dressed width less what is ripped off both edges", r.ripFrom()...)
	default:
		r.stop("leaf", RuleStockUnknown, "the stiles' width is not known: state leaf.stile, or name the board under stock.board")
	}
}

// ripped is the width a board gives.
func (r *resolver) ripped() length.Length { return r.set.Stock.Dressed.Width - 2*r.set.Stock.Rip }

func (r *resolver) ripFrom() []string {
	if r.model.Stock.Rip == nil {
		return []string{"stock.dressed.width"}
	}
	return []string{"stock.dressed.width", "stock.rip"}
}

// fromBoard stops when a member is wider than the board gives.
func (r *resolver) fromBoard(path, what string, width length.Length) {
	stock := r.set.Stock
	if stock.Board == "" || width <= r.ripped() {
		return
	}
	r.stop(path, RuleStockTooNarrow, "a %v is to be %v wide; a %v, %v wide and ripped %v each edge, gives %v: rip less or take wider boards", what, width, stock.Board, stock.Dressed.Width, stock.Rip, r.ripped())
}
