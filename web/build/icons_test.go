package main

import (
	"bytes"
	"encoding/json"
	"image/png"
	"math"
	"strconv"
	"strings"
	"testing"
)

// TestIcons: every picture has its size; one for a mask has the drawing in the
// middle circle that no mask cuts, and all else one colour.
func TestIcons(t *testing.T) {
	made := built(t)
	for _, p := range pictures {
		t.Run(p.name, func(t *testing.T) {
			img, err := png.Decode(bytes.NewReader(made[p.name]))
			if err != nil {
				t.Fatal(err)
			}
			if b := img.Bounds(); b.Dx() != p.side || b.Dy() != p.side {
				t.Fatalf("%v, want a side of %d", b, p.side)
			}
			_, _, _, corner := img.At(0, 0).RGBA()
			if full := corner == 0xffff; full != p.full {
				t.Errorf("alpha in the corner is %x", corner)
			}
			ground := img.At(0, 0)
			drawn, outside := 0, 0
			for y := range p.side {
				for x := range p.side {
					if img.At(x, y) == ground {
						continue
					}
					drawn++
					middle := float64(p.side) / 2
					if math.Hypot(float64(x)+0.5-middle, float64(y)+0.5-middle) > 0.4*float64(p.side) {
						outside++
					}
				}
			}
			if drawn < p.side*p.side/8 {
				t.Errorf("only %d dots are drawn", drawn)
			}
			if strings.Contains(p.name, "maskable") && outside > 0 {
				t.Errorf("a mask may cut off %d dots", outside)
			}
			if len(made[p.name]) > 5000 {
				t.Errorf("%d bytes, want a small file", len(made[p.name]))
			}
		})
	}
}

// TestManifestIcons: the manifest names pictures that are there, of the sizes
// it says, one for a mask, and opens the page beside it.
func TestManifestIcons(t *testing.T) {
	made := built(t)
	var m struct {
		StartURL string `json:"start_url"`
		Scope    string
		Icons    []struct{ Src, Sizes, Type, Purpose string }
	}
	if err := json.Unmarshal(made["manifest.webmanifest"], &m); err != nil {
		t.Fatal(err)
	}
	if m.StartURL != "./" || m.Scope != "./" {
		t.Errorf("opens %q in %q", m.StartURL, m.Scope)
	}
	mask := 0
	for _, i := range m.Icons {
		data, ok := made[i.Src]
		if !ok {
			t.Errorf("%s is not built", i.Src)
			continue
		}
		if i.Purpose == "maskable" {
			mask++
		}
		if i.Type == "image/svg+xml" {
			continue
		}
		c, err := png.DecodeConfig(bytes.NewReader(data))
		if side := strconv.Itoa(c.Width); err != nil || i.Sizes != side+"x"+side || i.Type != "image/png" {
			t.Errorf("%s is %dx%d, and stated as %s, %s: %v", i.Src, c.Width, c.Height, i.Sizes, i.Type, err)
		}
	}
	if mask != 1 || len(m.Icons) < 3 {
		t.Errorf("%d icons, %d for a mask", len(m.Icons), mask)
	}
}

// TestIconSource: what cannot be drawn is an error, not a gap in the picture.
func TestIconSource(t *testing.T) {
	const start = `<svg viewBox="0 0 8 8"><rect rx="1" fill="#fff"/>`
	for _, test := range []struct{ svg, want string }{
		{start + `<path fill="#000" d="M0 0 L1 1 L0 1 Z"/></svg>`, ""},
		{start + `</svg>`, "nothing is drawn"},
		{start + `<path fill="red" d="M0 0 Z"/></svg>`, "#rgb"},
		{start + `<path fill="#000" d="M0 0 h4"/></svg>`, `"h"`},
		{start + `<path fill="#000" d="M0"/></svg>`, `"M"`},
		{start + `<path fill="#000" d="M0 x"/></svg>`, "invalid"},
		{start + `<line fill="#000"/></svg>`, "cannot be drawn"},
		{start + `<circle fill="#000" cx="1"/></svg>`, "invalid"},
		{start, "unexpected EOF"},
	} {
		_, err := readIcon([]byte(test.svg))
		if (err == nil) != (test.want == "") || err != nil && !strings.Contains(err.Error(), test.want) {
			t.Errorf("readIcon(%s): %v, want %q", test.svg, err, test.want)
		}
	}
}
