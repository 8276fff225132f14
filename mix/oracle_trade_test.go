package mix_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"
)

// A tradeFigure is one row of the trade as the model has it.
type tradeFigure struct{ section, id, figures, source string }

// The figures of the trade, typed from the sources that are named beside them, and not
// read from mix/catalog/catalog.json: a figure that changes there is noticed here. A
// new row of the catalogue has its row here too, typed again from its source.
var tradeFigures = []tradeFigure{
	{"allowances", "blend-loss", "share=10%; low=5%; high=20%",
		"from memory; Brown and Pokorny 1975 say that there is a loss"},
	{"allowances", "settle-pot", "share=10%; low=5%; high=20%",
		"common practice; Verhagen, Acta Hort. 1168:14: 105 to 155 % of the delivered density, which is 5 to 35 % less"},

	{"containers", "SP1", "low=6.5 cu in; fill=7.25 cu in; high=8 cu in", z60},
	{"containers", "SP2", "low=13 cu in; fill=14 cu in; high=15 cu in", z60},
	{"containers", "SP3", "low=20 cu in; fill=25 cu in; high=30 cu in", z60},
	{"containers", "SP4", "low=51 cu in; fill=57 cu in; high=63 cu in", z60},
	{"containers", "SP5", "low=93 cu in; fill=114.5 cu in; high=136 cu in", z60},
	{"containers", "#1", "low=152 cu in; fill=172.8 cu in; high=251 cu in",
		z60 + "; 10 to the cubic foot, Washington State Univ. nursery-management text: 1728 / 10"},
	{"containers", "#2", "low=320 cu in; fill=397 cu in; high=474 cu in", z60},
	{"containers", "#3", "low=628 cu in; fill=685 cu in; high=742 cu in", z60},
	{"containers", "#5", "low=785 cu in; fill=1013.5 cu in; high=1242 cu in", z60},
	{"containers", "#7", "low=1337 cu in; fill=1563.5 cu in; high=1790 cu in", z60},
	{"containers", "#10", "low=2080 cu in; fill=2363 cu in; high=2646 cu in", z60},
	{"containers", "#15", "low=2768 cu in; fill=3232 cu in; high=3696 cu in", z60},
	{"containers", "#20", "low=4520 cu in; fill=4836 cu in; high=5152 cu in", z60},
	{"containers", "#25", "low=5775 cu in; fill=6318 cu in; high=6861 cu in", z60},
	{"containers", "flat", "low=360 cu in; fill=400 cu in; high=484 cu in",
		"common practice; UF/IFAS EDIS EP109 has the outside, 21 x 11 x 2 1/2 in"},
	{"containers", "tray-50", "cells=50; low=95 mL; fill=105 mL; high=115 mL", "from memory"},
	{"containers", "tray-72", "cells=72; low=39 mL; fill=44 mL; high=50 mL", "from memory"},
	{"containers", "tray-128", "cells=128; low=19 mL; fill=23 mL; high=26 mL", "from memory"},
	{"containers", "tray-200", "cells=200; low=10 mL; fill=11 mL; high=13 mL", "from memory"},
	{"containers", "tray-288", "cells=288; low=5.5 mL; fill=6 mL; high=7 mL", "from memory"},

	{"materials", "bark-chunks", "dry=354 lb/cu yd; wet=607 lb/cu yd; packs=1 cu ft, 2 cu ft, 3 cu ft; bulk=true; traits=dust",
		"Pacific Bulb Society, Growing Medium table: 0.21 and 0.36 g/cm3; packs are common practice"},
	{"materials", "bark-fines", "dry=303 lb/cu yd; wet=1112 lb/cu yd; packs=1 cu ft, 1.5 cu ft, 2 cu ft, 3 cu ft; bulk=true; traits=dust, woody",
		"Int. J. Agronomy 2012:978528, Table 1: 0.18 g/cm3 and 48 % water; packs are common practice"},
	{"materials", "bark-mulch", "dry=400 lb/cu yd; wet=800 lb/cu yd; " + mulchFigures + "; packs=2 cu ft, 3 cu ft; bulk=true; traits=dust, mulch, woody",
		mulchSource},
	{"materials", "coir", "dry=135 lb/cu yd; wet=1483 lb/cu yd; packs=1.5 cu ft, 2 cu ft; bulk=false; traits=dust",
		"HortScience 59(10):1477, 2024, as potted; Evans and others, HortScience 31, 1996: 0.08 and 80 % water; packs are common practice"},
	{"materials", "compost", "dry=800 lb/cu yd; wet=1600 lb/cu yd; packs=1 cu ft, 2 cu ft; bulk=true; traits=legionella, salt",
		"state composting bodies, as sold; NSW Health 2018; Oregon State Univ. EM 9308; packs are common practice"},
	{"materials", "gravel", "dry=2600 lb/cu yd; wet=2770 lb/cu yd; packs=1/2 cu ft; bulk=true; traits=dust",
		"CalRecycle, Weights and Volumes for Project Estimates; wet with the water of a growing-medium table; the pack is common practice"},
	{"materials", "hardwood-mulch", "dry=400 lb/cu yd; wet=800 lb/cu yd; " + mulchFigures + "; packs=2 cu ft, 3 cu ft; bulk=true; traits=dust, mulch, woody",
		mulchSource},
	{"materials", "peat", "dry=185 lb/cu yd; wet=1652 lb/cu yd; packed_low=278 lb/cu yd; packed_high=500 lb/cu yd; " +
		"opens_low=1.5; opens_high=2; bales=1 cu ft, 2.2 cu ft, 3 cu ft, 3.8 cu ft, 5.5 cu ft; packs=; bulk=false; traits=dust",
		"Int. J. Agronomy 2012:978528, Table 1: 0.11 g/cm3 and 87 % water; Univ. of Arkansas FSA6097: fluffed it gains 50 to 100 %; " +
			"Northeast Organic Farming Association, soil book, Appendix A: 500 lb/cu yd as sold, and 1.5 x 185; bales are common practice"},
	{"materials", "perlite", "dry=177 lb/cu yd; wet=919 lb/cu yd; packed_low=51 lb/cu yd; packed_high=320 lb/cu yd; packs=8 dry qt, 2 cu ft, 4 cu ft; bulk=false; traits=dust",
		"Frontiers in Plant Science 5:625, 2014, Table 4: 105 kg/m3 and 44 % water; Korean J. Soil Sci. Fert. 54(3):276, 2021: from 0.03 g/cm3; packs are common practice"},
	{"materials", "potting-mix", "dry=182 lb/cu yd; wet=1328 lb/cu yd; packs=16 dry qt, 1 cu ft, 2 cu ft, 64 dry qt; bulk=true; traits=dust, legionella",
		"Univ. of Arkansas, Greenhouse Management Online, Unit 7, Table 1: 0.108 g/cm3 and 68 % water; packs are common practice"},
	{"materials", "pumice", "dry=431 kg/m3; wet=1001 kg/m3; packs=1/2 cu ft, 1 cu ft; bulk=true; traits=dust",
		"Frontiers in Plant Science 5:625, 2014, Table 4: 431 kg/m3 and 57 % water; packs are common practice"},
	{"materials", "sand", "dry=2400 lb/cu yd; wet=3120 lb/cu yd; packs=1/2 cu ft; bulk=true; traits=dust, sand",
		"CalRecycle, Weights and Volumes for Project Estimates; the pack is common practice"},
	{"materials", "topsoil", "dry=2100 lb/cu yd; wet=3000 lb/cu yd; packs=3/4 cu ft, 1 cu ft; bulk=true; traits=legionella, soil",
		"CalRecycle, Weights and Volumes for Project Estimates: earth; packs are common practice"},
	{"materials", "vermiculite", "dry=118 lb/cu yd; wet=1000 lb/cu yd; packed_low=108 lb/cu yd; packed_high=270 lb/cu yd; packs=8 dry qt, 2 cu ft, 4 cu ft; bulk=false; traits=dust",
		"Frontiers in Plant Science 5:625, 2014, Table 4: from 70 kg/m3; the rest is from memory or common practice"},
	{"materials", "wood-chips", "dry=243 lb/cu yd; wet=800 lb/cu yd; " + mulchFigures + "; packs=2 cu ft; bulk=true; traits=dust, mulch, woody",
		"Oregon DEQ survey factors, dry; wet is from memory; settling as of bark mulch; the pack is common practice"},
	{"materials", "wood-fiber", "dry=87 kg/m3; wet=287 kg/m3; packs=2 cu ft, 3 cu ft; bulk=false; traits=dust, woody",
		"Frontiers in Plant Science 5:625, 2014, Table 4: 87 kg/m3 and 20 % water; packs are common practice"},

	{"mixes", "bark-peat", "parts=bark-fines 1, peat 1", "Univ. of Arkansas, Greenhouse Management Online, Unit 7, Table 1"},
	{"mixes", "peat-lite", "parts=peat 2, perlite 1, vermiculite 1", "Univ. of Arkansas, Greenhouse Management Online, Unit 7, Table 1"},
	{"mixes", "potting", "parts=bark-fines 3, peat 1, perlite 1", "common practice"},
	{"mixes", "rooting", "parts=peat 1, perlite 1", "equal parts are named by several extension texts"},

	{"soils", "clay", "swell=40%; swell_low=30%; swell_high=43%",
		"B. Roseke, Swell Factors for Various Soils, Project Engineer; Estimating in Building Construction, Example 9-2; pond clay"},
	{"soils", "loam", "swell=25%; swell_low=20%; swell_high=30%",
		"B. Roseke, Swell Factors for Various Soils, Project Engineer; the range is common practice"},
	{"soils", "sandy", "swell=12%; swell_low=5%; swell_high=15%",
		"B. Roseke, Swell Factors for Various Soils, Project Engineer; Construction Planning, Equipment and Methods, Table 4-1"},
}

const (
	z60          = "ANSI Z60.1 (2004, 2014), container classes, from memory; the fill is the middle"
	mulchFigures = "settle=10%; settle_low=10%; settle_high=25%"
	mulchSource  = "extension texts, moist, from memory; UF/IFAS: bags of 2 or 3 cu ft; settling: 10 % is common practice, " +
		"US CPSC, Public Playground Safety Handbook: at least 25 % under feet"
)

// What of a catalogue's row is no figure.
var tradeWords = []string{"id", "name", "also", "grade", "source", "confidence", "kind",
	"settle_source", "packed_source", "opens_source"}

// TestCatalogueAgrees holds every figure of the catalogue against the model's own.
func TestCatalogueAgrees(t *testing.T) {
	have := catalogueFigures(t)
	for _, want := range tradeFigures {
		name := want.section + " " + want.id
		got, ok := have[name]
		if !ok {
			t.Errorf("%s: the catalogue has no such row, want %s (%s)", name, want.figures, want.source)
			continue
		}
		delete(have, name)
		for key, figure := range want.split() {
			if got[key] != figure {
				t.Errorf("%s: the catalogue has %s=%s, want %s (%s)", name, key, got[key], figure, want.source)
			}
			delete(got, key)
		}
		for _, key := range slices.Sorted(maps.Keys(got)) {
			t.Errorf("%s: the catalogue has %s=%s, the model has no such figure: type it from its source", name, key, got[key])
		}
		if want.source == "" {
			t.Errorf("%s: no source", name)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(have)) {
		t.Errorf("%s: the model has no such row: type its figures from their source in oracle_trade_test.go", name)
	}
}

// catalogueFigures reads the figures of catalog.json, as text, row by row.
func catalogueFigures(t *testing.T) map[string]map[string]string {
	t.Helper()
	data, err := os.ReadFile("catalog/catalog.json")
	if err != nil {
		t.Fatal(err)
	}
	var sections map[string][]map[string]any
	if err := json.Unmarshal(data, &sections); err != nil {
		t.Fatal(err)
	}
	rows := map[string]map[string]string{}
	for section, list := range sections {
		for _, row := range list {
			if section == "sources" || section == "substitutes" {
				continue // no figures
			}
			figures := map[string]string{}
			for key, value := range row {
				if !slices.Contains(tradeWords, key) {
					figures[key] = figureText(value)
				}
			}
			rows[section+" "+fmt.Sprint(row["id"])] = figures
		}
	}
	return rows
}

// figureText writes a value of the catalogue as the model's rows have it.
func figureText(value any) string {
	var parts []string
	switch v := value.(type) {
	case []any:
		for _, e := range v {
			parts = append(parts, fmt.Sprint(e))
		}
	case map[string]any:
		for _, key := range slices.Sorted(maps.Keys(v)) {
			parts = append(parts, fmt.Sprint(key, " ", v[key]))
		}
	default:
		return fmt.Sprint(value)
	}
	return strings.Join(parts, ", ")
}

func (f *tradeFigure) split() map[string]string {
	figures := map[string]string{}
	for pair := range strings.SplitSeq(f.figures, "; ") {
		key, figure, _ := strings.Cut(pair, "=")
		figures[key] = figure
	}
	return figures
}

// tradeRows are the figures as the model counts with them.
type tradeRows struct {
	pots    map[string]modelPot
	mixes   map[string]modelMix
	density map[string][2]exact // dry and wet, in micrograms a microlitre
	settle  map[string]exact
	swell   map[string]spread
	common  map[string]exact // allowances
}

var trade = sync.OnceValue(func() *tradeRows {
	c := &tradeRows{map[string]modelPot{}, map[string]modelMix{}, map[string][2]exact{}, map[string]exact{},
		map[string]spread{}, map[string]exact{}}
	for i := range tradeFigures {
		c.add(tradeFigures[i].section, tradeFigures[i].id, tradeFigures[i].split())
	}
	return c
})

func (c *tradeRows) add(section, id string, figures map[string]string) {
	switch section {
	case "allowances":
		c.common[id] = percent(figures["share"])
	case "containers":
		cells := exactly(1, 1)
		if figures["cells"] != "" {
			cells = decimal(figures["cells"])
		}
		c.pots[id] = modelPot{id, cells.ceil(), row(figures["fill"]), row(figures["low"]), row(figures["high"])}
	case "materials":
		c.density[id] = [2]exact{density(figures["dry"]), density(figures["wet"])}
		if figures["settle"] != "" {
			c.settle[id] = percent(figures["settle"])
		}
	case "mixes":
		m := modelMix{id: id}
		for part := range strings.SplitSeq(figures["parts"], ", ") {
			of, amount, _ := strings.Cut(part, " ")
			m.parts = append(m.parts, modelPart{of, typed{value: decimal(amount)}})
		}
		c.mixes[id] = m
	case "soils":
		c.swell[id] = spread{percent(figures["swell_low"]), percent(figures["swell"]), percent(figures["swell_high"])}
	}
}

func percent(s string) exact { return decimal(strings.TrimSuffix(s, "%")).over(exactly(100, 1)) }

// row reads the volume of a container.
func row(s string) *typed {
	number, unit, _ := strings.Cut(s, " ")
	size := map[string]exact{"cu in": decimal("16387.064"), "mL": exactly(1000, 1)}[unit]
	return &typed{s, decimal(number).times(size).whole(nanolitre)}
}

// density reads a mass per volume, which the program keeps in micrograms a litre.
func density(s string) exact {
	number, unit, _ := strings.Cut(s, " ")
	size := map[string]exact{
		"lb/cu yd": decimal("453592370").over(decimal("764554.857984")).over(exactly(1000, 1)),
		"kg/m3":    exactly(1, 1),
		"g/cm3":    exactly(1000, 1),
	}[unit]
	return decimal(number).times(size).whole(exactly(1, 1_000_000))
}
