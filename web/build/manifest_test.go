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

// TestIcons: every picture has its size; one for a mask has the drawing in the
// middle circle that no mask cuts, and all else one colour.
func TestIcons(t *testing.T) {
	made := built(t)
	for _, p := range []struct {
		name string
		side int
		full bool // no corners cut off: the system cuts them
	}{
		{"icons/favicon-32.png", 32, false},
		{"icons/icon-180.png", 180, true},
		{"icons/icon-192.png", 192, false},
		{"icons/icon-512-maskable.png", 512, true},
	} {
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
