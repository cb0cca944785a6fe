package dxf

import (
	"strings"

	"stilewright/model/length"
	"stilewright/render/sheet"
)

// Colours are indices of the format's fixed palette: 1 red, 3 green, 4 cyan,
// 5 blue, 7 the foreground, 8 and 9 greys, 254 the palest grey, 255 white.
const (
	palest = 254
	white  = 255
)

// layers lists the layers with what an entity gets that a person draws on them
// later. Common practice, no source.
func layers() []layer {
	var all []layer
	for _, l := range sheet.Layers() {
		all = append(all, layer{
			name: l.String(), line: lineName(layerLine(l)),
			colour: layerColour(l), weight: weight(layerWeight(l)),
		})
	}
	return all
}

func layerColour(l sheet.Layer) int {
	switch l {
	case sheet.HiddenEdge, sheet.Hatch:
		return 8
	case sheet.Panel:
		return 4
	case sheet.Hardware:
		return 5
	case sheet.Opening:
		return 9
	case sheet.CentreMark:
		return 1
	case sheet.Dimensions:
		return 3
	}
	return foreground
}

func layerLine(l sheet.Layer) sheet.LineType {
	switch l {
	case sheet.HiddenEdge:
		return sheet.Hidden
	case sheet.CentreMark:
		return sheet.Centre
	}
	return sheet.Continuous
}

func layerWeight(l sheet.Layer) sheet.Weight {
	switch l {
	case sheet.Border:
		return sheet.Frame
	case sheet.Outline:
		return sheet.Wide
	}
	return sheet.Narrow
}

// weight is a line's width in hundredths of a millimetre. The format knows a
// fixed list of widths, which has 25, 50 and 70.
func weight(w sheet.Weight) int { return int(w.Width() / (10 * length.Micrometre)) }

func lineName(t sheet.LineType) string {
	return [...]string{continuous, "HIDDEN", "CENTRE", "PHANTOM"}[t]
}

func lineTypes() []lineType {
	return []lineType{
		{lineName(sheet.Hidden), "Hidden edge __ __ __", sheet.Hidden.Dashes()},
		{lineName(sheet.Centre), "Axis ____ . ____", sheet.Centre.Dashes()},
		{lineName(sheet.Phantom), "Neighbour or other position ____ . . ____", sheet.Phantom.Dashes()},
	}
}

// toneColour is a fill's colour; 0 is that of its layer.
func toneColour(t sheet.Tone) int {
	switch t {
	case sheet.Tint:
		return palest
	case sheet.Paper:
		return white
	}
	return 0
}

func isBlank(s string) bool { return strings.TrimSpace(s) == "" }
