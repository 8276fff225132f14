package main

import (
	"bytes"
	"cmp"
	"encoding/xml"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"io"
	"maps"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/image/vector"
)

// shape is one filled part of the icon, in the drawing's own units.
type shape struct {
	fill  color.NRGBA
	trace func(pen)
}

// pen draws an outline.
type pen interface {
	MoveTo(x, y float32)
	LineTo(x, y float32)
	QuadTo(x1, y1, x, y float32)
	CubeTo(x1, y1, x2, y2, x, y float32)
	ClosePath()
}

// icon is the drawing: a square of side wide, all of one colour, and shapes
// on it.
type icon struct {
	wide   float32
	ground color.NRGBA
	round  float32 // of the square's corners
	shapes []shape
}

// pictures are the files made of the icon. A full one has no corners cut off,
// since the system cuts them; small is how much of it the drawing takes then.
var pictures = []struct {
	name  string
	side  int
	full  bool
	small float32
}{
	{"icons/favicon-32.png", 32, false, 1},
	{"icons/icon-180.png", 180, true, 0.9},
	{"icons/icon-192.png", 192, false, 1},
	{"icons/icon-512-maskable.png", 512, true, 0.8},
}

// icons draws every picture of icons/icon.svg.
func (f files) icons() error {
	drawing, err := readIcon(f["icons/icon.svg"])
	if err != nil {
		return fmt.Errorf("icons/icon.svg: %w", err)
	}
	for _, p := range pictures {
		var b bytes.Buffer
		e := png.Encoder{CompressionLevel: png.BestCompression}
		if err := e.Encode(&b, few(drawing.draw(p.side, p.full, p.small))); err != nil {
			return err
		}
		f[p.name] = b.Bytes()
	}
	return nil
}

// draw paints the icon.
func (c *icon) draw(side int, full bool, small float32) *image.RGBA {
	out := image.NewRGBA(image.Rect(0, 0, side, side))
	scale := float32(side) / c.wide
	fill := func(p pencil, colour color.NRGBA, trace func(pen)) {
		p.Rasterizer = vector.NewRasterizer(side, side)
		trace(p)
		p.Draw(out, out.Bounds(), image.NewUniform(colour), image.Point{})
	}
	if full {
		draw.Draw(out, out.Bounds(), image.NewUniform(c.ground), image.Point{}, draw.Src)
	} else {
		fill(pencil{scale: scale}, c.ground, func(p pen) { square(p, c.wide, c.round) })
	}
	for _, s := range c.shapes {
		fill(pencil{scale: scale * small, shift: float32(side) * (1 - small) / 2}, s.fill, s.trace)
	}
	return out
}

// pencil draws in the drawing's units.
type pencil struct {
	*vector.Rasterizer
	scale, shift float32
}

func (p pencil) at(v float32) float32 { return float32(v*p.scale) + p.shift }

func (p pencil) MoveTo(x, y float32) { p.Rasterizer.MoveTo(p.at(x), p.at(y)) }
func (p pencil) LineTo(x, y float32) { p.Rasterizer.LineTo(p.at(x), p.at(y)) }
func (p pencil) QuadTo(a, b, x, y float32) {
	p.Rasterizer.QuadTo(p.at(a), p.at(b), p.at(x), p.at(y))
}
func (p pencil) CubeTo(a, b, c, d, x, y float32) {
	p.Rasterizer.CubeTo(p.at(a), p.at(b), p.at(c), p.at(d), p.at(x), p.at(y))
}

// square traces a square with round corners.
func square(p pen, wide, round float32) {
	k := round * 0.4477 // a quarter of a circle as one curve
	p.MoveTo(round, 0)
	p.LineTo(wide-round, 0)
	p.CubeTo(wide-k, 0, wide, k, wide, round)
	p.LineTo(wide, wide-round)
	p.CubeTo(wide, wide-k, wide-k, wide, wide-round, wide)
	p.LineTo(round, wide)
	p.CubeTo(k, wide, 0, wide-k, 0, wide-round)
	p.LineTo(0, round)
	p.CubeTo(0, k, k, 0, round, 0)
	p.ClosePath()
}

func circle(p pen, x, y, r float32) {
	k := r * 0.5523
	p.MoveTo(x+r, y)
	p.CubeTo(x+r, y+k, x+k, y+r, x, y+r)
	p.CubeTo(x-k, y+r, x-r, y+k, x-r, y)
	p.CubeTo(x-r, y-k, x-k, y-r, x, y-r)
	p.CubeTo(x+k, y-r, x+r, y-k, x+r, y)
	p.ClosePath()
}

// few paints with the 16 colours that a picture has most of, each other by the
// nearest: half a byte a dot, where edges would ask for four.
func few(from *image.RGBA) image.Image {
	b := from.Bounds()
	count := map[color.NRGBA]int{}
	at := func(x, y int) color.NRGBA { return color.NRGBAModel.Convert(from.RGBAAt(x, y)).(color.NRGBA) }
	for y := range b.Dy() {
		for x := range b.Dx() {
			count[at(x, y)]++
		}
	}
	most := slices.SortedFunc(maps.Keys(count), func(c, d color.NRGBA) int {
		return cmp.Or(cmp.Compare(count[d], count[c]), bytes.Compare([]byte{c.A, c.R, c.G, c.B}, []byte{d.A, d.R, d.G, d.B}))
	})
	var palette color.Palette
	for _, c := range most[:min(16, len(most))] {
		palette = append(palette, c)
	}
	out := image.NewPaletted(b, palette)
	for y := range b.Dy() {
		for x := range b.Dx() {
			out.Set(x, y, at(x, y))
		}
	}
	return out
}

// readIcon reads the drawing: an svg of one rect, its ground, and then paths
// and circles, each filled with one colour of three digits.
func readIcon(svg []byte) (*icon, error) {
	var c icon
	for d := xml.NewDecoder(bytes.NewReader(svg)); ; {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, err
		}
		tag, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		if err := c.add(tag); err != nil {
			return nil, fmt.Errorf("<%s>: %w", tag.Name.Local, err)
		}
	}
	if c.wide <= 0 || len(c.shapes) == 0 {
		return nil, errors.New("nothing is drawn")
	}
	return &c, nil
}

func (c *icon) add(tag xml.StartElement) error {
	a := attributes{}
	for _, at := range tag.Attr {
		a[at.Name.Local] = at.Value
	}
	switch tag.Name.Local {
	case "svg":
		_, err := fmt.Sscanf(a["viewBox"], "0 0 %g", &c.wide)
		return err
	case "rect":
		var err error
		c.round, err = a.number("rx")
		if err != nil {
			return err
		}
		c.ground, err = colour(a["fill"])
		return err
	}
	fill, err := colour(a["fill"])
	if err != nil {
		return err
	}
	switch tag.Name.Local {
	case "circle":
		x, err1 := a.number("cx")
		y, err2 := a.number("cy")
		r, err3 := a.number("r")
		c.shapes = append(c.shapes, shape{fill, func(p pen) { circle(p, x, y, r) }})
		return errors.Join(err1, err2, err3)
	case "path":
		steps, err := readPath(a["d"])
		c.shapes = append(c.shapes, shape{fill, func(p pen) {
			for _, s := range steps {
				s(p)
			}
		}})
		return err
	}
	return errors.New("cannot be drawn")
}

type attributes map[string]string

func (a attributes) number(name string) (float32, error) {
	v, err := strconv.ParseFloat(a[name], 32)
	return float32(v), err
}

// colour reads #rgb.
func colour(text string) (color.NRGBA, error) {
	v, err := strconv.ParseUint(strings.TrimPrefix(text, "#"), 16, 12)
	if len(text) != 4 || err != nil {
		return color.NRGBA{}, fmt.Errorf("fill %q: write #rgb", text)
	}
	return color.NRGBA{uint8(v>>8) * 17, uint8(v>>4&15) * 17, uint8(v&15) * 17, 255}, nil
}

// readPath reads an outline of M, L, Q, C and Z, parted by spaces.
func readPath(text string) (steps []func(pen), err error) {
	words := strings.Fields(text)
	for len(words) > 0 {
		letter := words[0][:1]
		words[0] = words[0][1:]
		if words[0] == "" {
			words = words[1:]
		}
		count := map[string]int{"M": 2, "L": 2, "Q": 4, "C": 6, "Z": 0}
		n, ok := count[letter]
		if !ok || len(words) < n {
			return nil, fmt.Errorf("outline: cannot draw %q", letter)
		}
		v := make([]float32, n)
		for i, w := range words[:n] {
			f, err := strconv.ParseFloat(w, 32)
			if err != nil {
				return nil, fmt.Errorf("outline: %w", err)
			}
			v[i] = float32(f)
		}
		words = words[n:]
		steps = append(steps, func(p pen) {
			switch letter {
			case "M":
				p.MoveTo(v[0], v[1])
			case "L":
				p.LineTo(v[0], v[1])
			case "Q":
				p.QuadTo(v[0], v[1], v[2], v[3])
			case "C":
				p.CubeTo(v[0], v[1], v[2], v[3], v[4], v[5])
			case "Z":
				p.ClosePath()
			}
		})
	}
	return steps, nil
}
