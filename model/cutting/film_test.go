package cutting

import (
	"math/rand/v2"
	"testing"

	"stilewright/model/length"
)

// By hand: a roll 600 wide covers 1000 with an overlap of 20 in two strips, the
// second 1000 − 580 = 420 wide.
func TestFilmByHand(t *testing.T) {
	mm := length.Millimetre
	j := FilmJob{RollWidth: 600 * mm, Overlap: 20 * mm, Faces: []FilmFace{{"A", 1000 * mm, 2000 * mm, 1, UpTheFace}, {"B", 170 * mm, 500 * mm, 2, UpTheFace}}}
	l := checkedFilm(t, j)
	if l.Length != 4500*mm || len(l.Pulls) != 3 {
		t.Errorf("%v in %d pulls", l.Length.Decimal(), len(l.Pulls))
	}
	if s := l.Pulls[1].Strips; len(s) != 2 || s[0].Width != 420*mm || s[1].At != 420*mm {
		t.Errorf("second pull %+v", s)
	}
	j.Faces = []FilmFace{{"A", 600 * mm, 2000 * mm, 3, EitherWay}}
	if l := checkedFilm(t, j); l.Length != 6000*mm || !l.Proven || l.Waste != 0 {
		t.Errorf("%+v", l)
	}
	j.Faces = []FilmFace{{"A", 2000 * mm, 600 * mm, 1, EitherWay}}
	if l := checkedFilm(t, j); l.Length != 2000*mm || l.Pulls[0].Strips[0].Direction != AcrossTheFace {
		t.Errorf("%+v", l)
	}
}

func checkedFilm(t *testing.T, j FilmJob) FilmLayout {
	t.Helper()
	l, err := LayOutFilm(j)
	if err != nil {
		t.Fatal(err)
	}
	if err := CheckFilm(j, l); err != nil {
		t.Fatal(err)
	}
	return l
}

func TestFilmRandom(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 6))
	for range 300 {
		size := func(most int) length.Length { return length.Length(1+rnd.IntN(most)) * length.Inch / 64 }
		j := FilmJob{RollWidth: 500*length.Millimetre + size(4000), Overlap: size(100), Margin: size(60)}
		for range 1 + rnd.IntN(6) {
			j.Faces = append(j.Faces, FilmFace{"F", size(4000), size(6000), 1 + rnd.IntN(5), FilmDirection(rnd.IntN(3))})
		}
		l := checkedFilm(t, j)
		if l.Waste < -1e-6 { // mm², rounding of the areas
			t.Fatalf("seed %d: waste %f", *seed, l.Waste)
		}
		l.Pulls[0].Strips[0].Width--
		if CheckFilm(j, l) == nil {
			t.Fatalf("seed %d: a strip too narrow passes", *seed)
		}
	}
}
