package main

import (
	"fmt"
	"os"
	"regexp"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"example.org/barrow/mix"
)

// The decimal mark is a habit of what is typed and shown on the command line. Job
// files, JSON and CSV have points, whoever reads them. web/ui/decimal.js is the same
// for the page, and web/testdata/entry.json holds both to what was typed.

// figure finds digits with points and commas between them. In decimals a comma can only
// be the decimal mark; in thousands every point can only part thousands, or else the
// figure is doubtful.
var (
	figure    = regexp.MustCompile(`\d+(?:[.,]\d+)+`)
	decimals  = regexp.MustCompile(`^\d+,\d+$`)
	thousands = regexp.MustCompile(`^[1-9]\d{0,2}(?:\.\d{3})+(?:,\d+)?$`)
)

// swap writes points as commas and commas as points.
var swap = strings.NewReplacer(".", ",", ",", ".")

// pointed writes decimal commas as points. Where 1,5 is one and a half, 1.500 may be
// fifteen hundred: it becomes 1,500, which the library refuses and explains. 1.5 can
// only be meant as it stands.
func pointed(typed string) string {
	return figure.ReplaceAllStringFunc(typed, func(digits string) string {
		if decimals.MatchString(digits) || thousands.MatchString(digits) {
			return swap.Replace(digits)
		}
		return digits
	})
}

// pointedParts is pointed for the parts of a mix, which commas part too, and
// semicolons. Between two digits a comma is a decimal one, unless a name stands on both
// sides of the figure: "bark 3,1 peat".
func pointedParts(typed string) string {
	var parts []string
	for part := range strings.SplitSeq(typed, ";") {
		if part = strings.TrimSpace(part); part != "" {
			parts = append(parts, part)
		}
	}
	list := strings.Join(parts, ", ")
	isDigit := func(i int) bool { return 0 <= i && i < len(list) && '0' <= list[i] && list[i] <= '9' }
	var out strings.Builder
	from := 0
	for i := 0; i <= len(list); i++ {
		if i == len(list) || list[i] == ',' && !(isDigit(i-1) && isDigit(i+1)) {
			out.WriteString(pointedPart(list[from:i]))
			out.WriteString(list[i:min(i+1, len(list))])
			from = i + 1
		}
	}
	return out.String()
}

// pointedPart is pointed for one part, "1,5 bark", whose figure stands before its name
// or behind it.
func pointedPart(part string) string {
	words, at, n := strings.Fields(part), 0, 0
	for i, word := range words {
		if decimals.MatchString(word) {
			at, n = i, n+1
		}
	}
	if n == 1 && (at == 0) != (at == len(words)-1) {
		return strings.Replace(part, ",", ".", 1)
	}
	return part
}

// asTyped writes a text with points as somebody with commas types it, wherever that is
// read again as the same.
func (a *app) asTyped(text string) string {
	if a.language == nil {
		return text
	}
	return figure.ReplaceAllStringFunc(text, func(digits string) string {
		if turned := swap.Replace(digits); pointed(turned) == digits {
			return turned
		}
		return digits
	})
}

// decimalFlag gives a command --decimal, and makes it read what was typed by it.
func (a *app) decimalFlag(cmd *cobra.Command) {
	mark := cmd.Flags().String("decimal", "",
		"the `MARK` typed and shown, never in files, JSON or CSV: comma or point, by LC_ALL, LC_NUMERIC or LANG")
	cmd.RegisterFlagCompletionFunc("decimal",
		cobra.FixedCompletions([]string{"comma", "point"}, cobra.ShellCompDirectiveNoFileComp))
	cmd.PreRunE = func(cmd *cobra.Command, args []string) error {
		comma := *mark == "comma" || *mark == "" && commaByLocale(os.Getenv)
		if !comma && *mark != "" && *mark != "point" {
			return fmt.Errorf("--decimal %q: write comma or point", *mark)
		}
		if comma {
			a.language = a.language.Comma(true)
			readCommas(cmd, args)
		}
		return nil
	}
}

// quantityArgs are the commands whose arguments are quantities. Those of the others are
// files and names.
var quantityArgs = map[string]bool{"fill": true, "reach": true, "convert": true}

// quantityFlags are the flags, besides fields of a task, that have quantities in them.
var quantityFlags = map[string]bool{"pack": true, "bulk": true, "have": true, "without": true, "bought": true}

// readCommas writes points for the decimal commas in all that was typed, so that
// nothing behind it need know of them.
func readCommas(cmd *cobra.Command, args []string) {
	if quantityArgs[cmd.Name()] {
		for i := range args {
			args[i] = pointed(args[i])
		}
	}
	cmd.Flags().VisitAll(func(f *pflag.Flag) {
		switch v := f.Value.(type) {
		case *field:
			if v.Name == "mix" {
				v.text = pointedParts(v.text)
			} else {
				v.text = pointed(v.text)
			}
		case pflag.SliceValue:
			if quantityFlags[f.Name] {
				list := v.GetSlice()
				for i := range list {
					list[i] = pointed(list[i])
				}
				v.Replace(list)
			}
		}
	})
}

// inLanguage makes a job's plan write figures as they are shown here. What goes to
// programs has points.
func (a *app) inLanguage(o *output) func(*mix.Job) {
	return func(j *mix.Job) {
		o.override(j)
		if !o.json && !o.csv {
			j.Language = a.language
		}
	}
}

// shown writes a figure of package units with the mark of the reader.
func (a *app) shown(figure string) string { return a.language.Figure(figure) }

// commaByLocale reports whether the environment asks for decimal commas: by the first
// of LC_ALL, LC_NUMERIC and LANG that is set, as POSIX has it (The Open Group Base
// Specifications, 8.2).
func commaByLocale(env func(string) string) bool {
	for _, name := range []string{"LC_ALL", "LC_NUMERIC", "LANG"} {
		if locale := env(name); locale != "" {
			return commaIn(locale)
		}
	}
	return false
}

// commaIn reports whether a locale such as de_AT.UTF-8 has a decimal comma.
func commaIn(locale string) bool {
	name, _, _ := strings.Cut(locale, ".")
	name, _, _ = strings.Cut(name, "@")
	name = strings.ReplaceAll(name, "-", "_")
	language, _, _ := strings.Cut(name, "_")
	has := func(list, word string) bool { return strings.Contains(" "+list+" ", " "+word+" ") }
	return word(language) && (has(commaLanguages, language) && !has(pointCountries, name) || has(commaCountries, name))
}

// word reports whether a language's code is one, so that it is found whole in a list.
func word(s string) bool { return len(s) == 2 && !strings.ContainsAny(s, " ") }

// Languages with a decimal comma, and the countries where that differs from the
// language, from the Unicode CLDR; a test holds them to its tables in
// golang.org/x/text.
const (
	commaLanguages = "af az be bg br bs ca cs cu da de el eo es et eu ff fi fo fr fy gl hr hu hy id in is it " +
		"ka kk kl km ky lb ln lo lt lu lv mk mo nb nl nn no os pl pt rn ro ru rw se sg sh sk sl sq sr sv tg tk tr tt " +
		"uk uz vi wo"
	pointCountries = "de_CH de_LI it_CH es_BR es_BZ es_CU es_DO es_GT es_HN es_MX es_NI es_PA es_PE es_PR es_SV es_US"
	commaCountries = "en_AT en_BE en_CH en_DE en_DK en_FI en_NL en_SE en_SI en_ZA " +
		"ar_DZ ar_LB ar_LY ar_MA ar_MR ar_TN ms_BN ps_AF qu_BO sw_CD"
)
