package main

import "testing"

// TestLocator names paths of every form, in a document that has what they lead to and
// in one that cannot be read.
func TestLocator(t *testing.T) {
	document := `{"tasks": [
		{"kind": "cover", "area": {"corners": [["0 m", "0 m"]], "plus": ["1 sq m"]}},
		{"kind": "fill", "name": "Pots", "containers": [{"size": "#1"}, {"count": 2}]},
		{"name": "a\u001b[2Jb"}],
		"mixes": [{"id": "house"}], "containers": [{"id": "crate"}],
		"materials": [{"name": "Grit", "bales": ["1 L"]}],
		"offers": [{"material": "peat", "pack": "3.8 cu ft"}, {"bulk": 1}, {}],
		"yard": {"without": ["peat:1 cu ft"], "bought": [{"offer": "peat:2 cu ft"}]}}`
	for _, tt := range []struct{ path, read, unread string }{
		{"", "", ""},
		{"haul.payload", "haul, payload", "haul, payload"},
		{"tasks", "tasks", "tasks"},
		{"tasks[0].area.corners[0][1]", "task 1 (cover), area, corner 1, 2", "task 1, area, corner 1, 2"},
		{"tasks[0].area.plus[0]", "task 1 (cover), area, more ground 1", "task 1, area, more ground 1"},
		{"tasks[1].containers[0].ball", "task 2 (Pots), line 1 (#1), ball", "task 2, line 1, ball"},
		{"tasks[1].containers[1]", "task 2 (Pots), line 2", "task 2, line 2"},
		{"tasks[1].containers[2]", "task 2 (Pots), line 3", "task 2, line 3"},
		{"tasks[2]", "task 3 (a\uFFFD[2Jb)", "task 3"},
		{"mixes[0].parts.peet", "mix 1 (house), parts, peet", "mix 1, parts, peet"},
		{"containers[0].holds", "container 1 (crate), holds", "container 1, holds"},
		{"materials[0].bales[0]", "material 1 (Grit), bale 1", "material 1, bale 1"},
		{"offers[0].price", "offer 1 (peat 3.8 cu ft), price", "offer 1, price"},
		{"offers[1]", "offer 2 (1)", "offer 2"},
		{"offers[2].pack", "offer 3, pack", "offer 3, pack"},
		{"yard.without[0]", "yard, sold out 1 (peat:1 cu ft)", "yard, sold out 1"},
		{"yard.bought[0].count", "yard, bought 1 (peat:2 cu ft), count", "yard, bought 1, count"},
		{`on_hand["pe at"]`, `on_hand, "pe at"`, `on_hand, "pe at"`},
		{`on_hand["a]b.c[0]"].x`, `on_hand, "a]b.c[0]", x`, `on_hand, "a]b.c[0]", x`},
		{"[0][1]", "1, 2", "1, 2"},
	} {
		if got := locatorOf([]byte(document)).name(tt.path); got != tt.read {
			t.Errorf("%s: %q, want %q", tt.path, got, tt.read)
		}
		if got := locatorOf([]byte("{")).name(tt.path); got != tt.unread {
			t.Errorf("%s of what cannot be read: %q, want %q", tt.path, got, tt.unread)
		}
	}
}
