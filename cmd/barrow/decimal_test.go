package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/text/language"
	"golang.org/x/text/message"
	numbers "golang.org/x/text/number"

	"example.org/barrow/units"
)

// TestPointedAsOnThePage: what the page keeps for what is typed with decimal commas, the
// command line reads too. Units that the page adds are not typed here, and are cut off.
func TestPointedAsOnThePage(t *testing.T) {
	data, err := os.ReadFile("../../web/testdata/entry.json")
	require.NoError(t, err)
	var file struct {
		Rows []struct {
			Kind, Typed string
			Comma       bool
			Doc         any
		}
	}
	require.NoError(t, json.Unmarshal(data, &file))
	checked := 0
	for _, row := range file.Rows {
		doc, isText := row.Doc.(string)
		if !row.Comma || !isText || row.Kind == "text" || row.Kind == "money" {
			continue
		}
		read := pointed(row.Typed)
		if row.Kind == "parts" {
			read = pointedParts(row.Typed)
			require.Equal(t, doc, read, row.Typed)
		}
		require.Equal(t, figure.FindAllString(doc, -1), figure.FindAllString(read, -1), row.Typed)
		checked++
	}
	require.Greater(t, checked, 30)
}

// TestPointedParts: besides the rows of the page.
func TestPointedParts(t *testing.T) {
	for typed, want := range map[string]string{
		"bark 3,1 peat": "bark 3,1 peat", "bark 1,5 , peat 2": "bark 1.5 , peat 2", "": "", ";": "", "potting": "potting",
		"1,5 bark; 2 peat": "1.5 bark, 2 peat", "bark 1,5": "bark 1.5", "1,5": "1,5", "a 1,5 2,5": "a 1,5 2,5",
	} {
		require.Equal(t, want, pointedParts(typed), typed)
	}
}

// FuzzPointed: a figure typed with a comma means what it means with a point, and what
// is shown with commas is read back as the same.
func FuzzPointed(f *testing.F) {
	for _, seed := range []string{"1.5", "0.001", "2.500", "1500", "12.125 L", "1 1/2", "3.8 cu ft at 4.75", "1.2.3", "0.5 x 1.25", ".5"} {
		f.Add(seed)
	}
	plain := regexp.MustCompile(`^(0|[1-9][0-9]{0,8})\.[0-9]{1,9}$`)
	a := &app{language: (&app{}).language.Comma(true)}
	f.Fuzz(func(t *testing.T, text string) {
		if shown := a.asTyped(text); pointed(shown) != text && pointed(text) == text {
			t.Errorf("%q is shown as %q, and read as %q", text, shown, pointed(shown))
		}
		if !plain.MatchString(text) {
			return
		}
		want, err := units.ParseVolume(text + " L")
		got, errComma := units.ParseVolume(pointed(strings.Replace(text, ".", ",", 1)) + " L")
		if want != got || (err == nil) != (errComma == nil) {
			t.Errorf("%s L is %v, with a comma %v (%v, %v)", text, want, got, err, errComma)
		}
		if thousands.MatchString(text) {
			if _, err := units.ParseVolume(pointed(text) + " L"); err == nil {
				t.Errorf("%s L may be thousands, and is not asked about", text)
			}
		}
	})
}

// TestCommaOfLocales: the Unicode CLDR, as golang.org/x/text has it, is the oracle, for
// every language and country of two letters in the language's usual script.
func TestCommaOfLocales(t *testing.T) {
	checked := map[bool]int{}
	for l := range 26 * 26 {
		code := letters(l, 'a')
		base, err := language.ParseBase(code)
		if err != nil || base.String() != code {
			continue
		}
		if code == "no" { // as a whole, Norwegian has no figures in the tables
			base, _ = language.ParseBase("nb")
		}
		tag, err := language.Compose(base)
		require.NoError(t, err)
		script, _ := tag.Script()
		for c := range 26 * 26 {
			country := letters(c, 'A')
			region, err := language.ParseRegion(country)
			if err != nil || !region.IsCountry() || region.Canonicalize().String() != country {
				continue
			}
			at, err := language.Compose(base, region)
			require.NoError(t, err)
			if own, _ := at.Script(); own != script {
				continue
			}
			want := strings.Contains(message.NewPrinter(at).Sprint(numbers.Decimal(1.5)), ",")
			if got := commaIn(code + "_" + country + ".UTF-8"); got != want {
				t.Errorf("%s_%s has a decimal comma: %t, by the CLDR %t", code, country, got, want)
			}
			checked[want]++
		}
	}
	if checked[true] < 1000 || checked[false] < 1000 {
		t.Errorf("checked %v", checked)
	}
}

// letters is the n-th word of two letters.
func letters(n int, first rune) string {
	return string(first+rune(n/26)) + string(first+rune(n%26))
}

func TestCommaByLocale(t *testing.T) {
	for _, tt := range []struct {
		all, numeric, lang string
		want               bool
	}{
		{"", "", "", false},
		{"", "", "de_DE.UTF-8", true},
		{"", "C", "de_DE.UTF-8", false},
		{"", "de_AT@euro", "C", true},
		{"en_US.UTF-8", "de_DE", "de_DE", false},
		{"es_ES", "", "", true},
		{"es-AR", "", "", true},
		{"es_MX.UTF-8", "", "", false},
		{"de", "", "", true},
		{"de_CH", "", "", false},
		{"POSIX", "", "", false},
		{"C.UTF-8", "", "", false},
		{"eo", "", "", true},
		{"e", "", "", false},
		{"be bg", "", "", false},
	} {
		env := map[string]string{"LC_ALL": tt.all, "LC_NUMERIC": tt.numeric, "LANG": tt.lang}
		require.Equal(t, tt.want, commaByLocale(func(name string) string { return env[name] }), env)
	}
}

// TestCommaShown: with decimal commas a plan is the same but for its marks; what
// sources are called, such as 49 CFR 575.6, stays. JSON and CSV do not change.
func TestCommaShown(t *testing.T) {
	jobs, err := filepath.Glob("../../testdata/jobs/good-*.json")
	require.NoError(t, err)
	for _, job := range jobs {
		point, comma := output1(t, "plan", job, "--working"), output1(t, "plan", job, "--working", "--decimal", "comma")
		back := regexp.MustCompile(`(\d),(\d)`).ReplaceAllString(comma, "$1.$2")
		require.Equal(t, strings.Fields(point), strings.Fields(back), job)
		own, _, _ := strings.Cut(comma, "Where the figures come from")
		for _, left := range regexp.MustCompile(`\S*\d\.\d\S*`).FindAllString(own, -1) {
			if left != "571.110" && !strings.HasPrefix(left, "575.6") {
				t.Errorf("%s: %s has a point", job, left)
			}
		}
		for _, form := range []string{"--json", "--csv"} {
			require.Equal(t, output1(t, "plan", job, form), output1(t, "plan", job, form, "--decimal", "comma"), job)
		}
	}
}

// output1 is what a command writes to standard output.
func output1(t *testing.T, args ...string) string {
	t.Helper()
	var out, errOut strings.Builder
	if status := run(args, strings.NewReader(""), &out, &errOut); status != exitDone {
		t.Fatalf("%v: %d\n%s", args, status, errOut.String())
	}
	return out.String()
}
