package movement

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/spec"
)

// A Time is a time of the year.
type Time int

// The times.
const (
	Hung Time = iota // when the doors are made and hung
	Winter
	Summer
)

// Times are the three of them.
func Times() []Time { return []Time{Hung, Winter, Summer} }

// String is the time's word.
func (t Time) String() string { return [...]string{"hung", "winter", "summer"}[t] }

// An Air is the air of the room at one time.
type Air struct {
	Celsius  float64 // °C
	Humidity float64 // relative, percent
	Moisture float64 // that wood settles at, percent
	Source   string  // of temperature and humidity
}

// String is the air in words.
func (a Air) String() string {
	return fmt.Sprintf("%.0f °C, %.0f %% humidity, wood at %.1f %%", a.Celsius, a.Humidity, a.Moisture)
}

// Airs are the air at each Time: as the model states, else the usual.
func Airs(m spec.Spec) ([3]Air, error) {
	var airs [3]Air
	for _, t := range Times() {
		stated := [...]spec.Season{m.Seasons.Hung, m.Seasons.Winter, m.Seasons.Summer}[t]
		usual, err := catalog.AirOf(t.String())
		if err != nil {
			return airs, err
		}
		air := Air{Celsius: usual.Celsius, Humidity: usual.Humidity, Source: usual.Source.String()}
		if stated.Celsius > 0 {
			air.Celsius, air.Source = float64(stated.Celsius), "stated"
		}
		if stated.Humidity > 0 {
			air.Humidity, air.Source = float64(stated.Humidity), "stated"
		}
		if air.Moisture, err = catalog.Moisture(air.Celsius, air.Humidity); err != nil {
			return airs, fmt.Errorf("%v: %w", t, err)
		}
		airs[t] = air
	}
	return airs, nil
}

// A Wood is the wood of a frame and how it is sawn.
type Wood struct {
	Species catalog.Wood
	Grain   catalog.Grain
}

// Wide is by how much a width across a board's face grows between two airs;
// less than 0 when it shrinks.
func (w Wood) Wide(size length.Length, from, to Air) length.Length {
	return w.Species.Moves(size, w.Grain, from.Moisture, to.Moisture)
}

// Thick is the same of a board's thickness.
func (w Wood) Thick(size length.Length, from, to Air) length.Length {
	other := catalog.QuarterSawn
	if w.Grain == catalog.QuarterSawn {
		other = catalog.FlatSawn
	}
	return w.Species.Moves(size, other, from.Moisture, to.Moisture)
}

// Sheet is by how much a sheet's side grows between two airs, by heat and
// moisture.
func Sheet(m catalog.SheetMaterial, size length.Length, from, to Air) length.Length {
	return length.Round(size.MM() * (float64(m.Warms(from.Celsius, to.Celsius)) + m.Swells(from.Humidity, to.Humidity)))
}
