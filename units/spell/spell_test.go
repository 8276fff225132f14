package spell

import "testing"

func TestWord(t *testing.T) {
	words := []string{"in", "inches", "ft", "perlite", "peat", "bark-fines", "#1", "#3", "tray-50", "tray-72"}
	for _, tt := range []struct{ why, word, want string }{
		{"one letter dropped", "inchs", "inches"},
		{"neighbours swapped", "perltie", "perlite"},
		{"two slips in a long word", "bark-fnies", "bark-fines"},
		{"three slips in eight letters", "perlight", "perlite"},
		{"three slips in seven", "perlght", ""},
		{"case is no slip", "PEAT", "peat"},
		{"a short word allows one", "fy", "ft"},
		{"a letter alone is no word", "f", ""},
		{"too far", "gravel", ""},
		{"another figure is no slip", "#4", ""},
		{"figures swapped are", "tray-27", "tray-72"},
		{"letters beside a figure are", "trya-72", "tray-72"},
		{"empty", "", ""},
		{"longer than any word", "perliteperliteperliteperliteperliteperlite", ""},
	} {
		if got := Word(tt.word, words); got != tt.want {
			t.Errorf("%s: Word(%q) = %q, want %q", tt.why, tt.word, got, tt.want)
		}
	}
}

func TestDistance(t *testing.T) {
	for _, tt := range []struct {
		a, b       string
		stop, want int
	}{
		{"", "", 9, 0},
		{"kitten", "sitting", 9, 3}, // the textbook pair, Levenshtein distance 3
		{"ca", "abc", 9, 3},         // optimal string alignment gives 3 where the free form gives 2
		{"ab", "ba", 9, 1},
		{"abcdef", "uvwxyz", 2, 2}, // gives up
	} {
		if got := Distance(tt.a, tt.b, tt.stop); got != tt.want {
			t.Errorf("Distance(%q, %q, %d) = %d, want %d", tt.a, tt.b, tt.stop, got, tt.want)
		}
		if got := Distance(tt.b, tt.a, tt.stop); got != tt.want {
			t.Errorf("Distance(%q, %q, %d) = %d, want %d", tt.b, tt.a, tt.stop, got, tt.want)
		}
	}
}
