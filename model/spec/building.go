package spec

import "stilewright/model/length"

// Header is what the track is screwed to: framing behind the lining of the
// opening's head. Height, thickness and span are needed only to work out how
// far it sags.
type Header struct {
	Lining    *length.Length `key:"lining" doc:"what the screws go through before they reach the framing" least:"0" most:"100"`
	Wood      string         `key:"wood" doc:"of the framing" form:"species"`
	Height    *length.Length `key:"height" doc:"of the framing, upright; with thickness it tells how far it sags" above:"0" most:"600"`
	Thickness *length.Length `key:"thickness" doc:"of the framing, front to back, all its plies together" above:"0" most:"400"`
	Span      *length.Length `key:"span" doc:"of the framing between its supports; left out, the width of the opening" above:"0" most:"12000"`
}

// Fixing is the screws that hold the track.
type Fixing struct {
	Screw   Screw          `key:"screw" doc:"the screw through the track's top"`
	Spacing *length.Length `key:"spacing" doc:"greatest distance between screws along the track" least:"50" most:"1000"`
}

// Seasons are the air of the room at three times.
type Seasons struct {
	Hung   Season `key:"hung" doc:"when the doors are made and hung"`
	Winter Season `key:"winter" doc:"at its driest"`
	Summer Season `key:"summer" doc:"at its most humid"`
}

// A Season is the air at one time. 0 is what the writer left to the default.
type Season struct {
	Celsius  int `key:"celsius" doc:"temperature in degrees Celsius" range:"1 50"`
	Humidity int `key:"humidity" doc:"relative humidity in percent" range:"5 95"`
}
