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
	{"allowances", "brim", "share=6%; low=4%; high=15%",
		"a nursery-management text: 172.8 of 183 cu in; Univ. of Florida, substrate tests in containers: 1/2 in below the brim, " +
			"4 % of a straight pot 12 in deep, 13 % of one 4 in deep; NDSU: 1 in and more in large ones, 14 % of 7 in, 15 % of 183 cu in"},
	{"allowances", "settle-pot", "share=10%; low=4.76%; high=35.5%",
		"common practice; Verhagen, Acta Hort. 1168:14: 105 to 155 % of the delivered density, which is 4.76 to 35.5 % lost"},

	{"containers", "SP1", "low=6.5 cu in; brim=7.25 cu in; high=8 cu in", z60},
	{"containers", "SP2", "low=13 cu in; brim=14 cu in; high=15 cu in", z60},
	{"containers", "SP3", "low=20 cu in; brim=25 cu in; high=30 cu in", z60},
	{"containers", "SP4", "low=51 cu in; brim=57 cu in; high=63 cu in", z60},
	{"containers", "SP5", "low=93 cu in; brim=114.5 cu in; high=136 cu in", z60},
	{"containers", "#1", "low=152 cu in; brim=183 cu in; high=251 cu in", z60 + "; 6 in wide and 7 in deep, 183 cu in, filled 10 to the cubic foot: a nursery text that cannot be found again"},
	{"containers", "#2", "low=320 cu in; brim=397 cu in; high=474 cu in", z60},
	{"containers", "#3", "low=628 cu in; brim=685 cu in; high=742 cu in", z60},
	{"containers", "#5", "low=785 cu in; brim=1013.5 cu in; high=1242 cu in", z60},
	{"containers", "#7", "low=1337 cu in; brim=1563.5 cu in; high=1790 cu in", z60},
	{"containers", "#10", "low=2080 cu in; brim=2363 cu in; high=2646 cu in", z60},
	{"containers", "#15", "low=2768 cu in; brim=3232 cu in; high=3696 cu in", z60},
	{"containers", "#20", "low=4520 cu in; brim=4836 cu in; high=5152 cu in", z60},
	{"containers", "#25", "low=5775 cu in; brim=6318 cu in; high=6861 cu in", z60},
	{"containers", "P9", "brim=0.5 L", nps},
	{"containers", "C1", "brim=1 L", nps},
	{"containers", "C1.5", "brim=1.5 L", nps},
	{"containers", "C2", "brim=2 L", nps},
	{"containers", "C3", "brim=3 L", nps},
	{"containers", "C4", "brim=4 L", nps},
	{"containers", "C5", "brim=5 L", nps},
	{"containers", "C7.5", "brim=7.5 L", nps},
	{"containers", "C10", "brim=10 L", nps},
	{"containers", "C15", "brim=15 L", nps},
	{"containers", "pot-4", "brim=0.5 L", rims},
	{"containers", "pot-6", "low=1 L; brim=1.9 L", rims},
	{"containers", "pot-8", "low=3 liq qt; brim=4 L; high=4.5 L", rims},
	{"containers", "pot-10", "low=5 liq qt; brim=6.4 L; high=8 L", rims},
	{"containers", "pot-12", "low=10 dry qt; brim=13.2 L; high=13.5 L", rims},
	{"containers", "pot-16", "low=22 liq qt; brim=24.4 L; high=28 L", rims},
	{"containers", "pot-20", "low=28 liq qt; brim=39 L; high=52 L", rims},
	{"containers", "sq-2.5", "brim=14.15 cu in", squares},
	{"containers", "sq-3", "brim=28.9 cu in", squares},
	{"containers", "sq-4", "low=35.265 cu in; brim=51 cu in", squares},
	{"containers", "sq-5", "brim=2.65 L", squares},
	{"containers", "sq-6", "brim=4.1 L", squares},
	{"containers", "cloth-1", "brim=1 gal", clothNamed},
	{"containers", "cloth-3", "brim=3 gal", clothNamed},
	{"containers", "cloth-5", "brim=5 gal", "Million and Yeager, HortScience 57(7):743, 2022: 18 L of mix, which is 95 % of 5 gal"},
	{"containers", "cloth-7", "brim=7 gal", clothNamed},
	{"containers", "cloth-10", "brim=10 gal", clothNamed},
	{"containers", "cloth-15", "brim=15 gal", clothNamed},
	{"containers", "cloth-20", "brim=20 gal", clothNamed},
	{"containers", "band-4", "low=16.9 cu in; fill=19 cu in; high=21.2 cu in", bands},
	{"containers", "band-5", "low=22.6 cu in; fill=25.4 cu in; high=28.2 cu in", bands},
	{"containers", "band-6", "low=63.1 cu in; fill=71 cu in; high=78.8 cu in", bands},
	{"containers", "band-9", "low=115.2 cu in; fill=129.6 cu in; high=144 cu in", bands},
	{"containers", "band-14", "low=179.2 cu in; fill=201.6 cu in; high=224 cu in", bands},
	{"containers", "cell-50", "fill=50 mL", nps},
	{"containers", "cell-55", "fill=55 mL", "Ciência Florestal, Myracrodruon urundeuva in tubes of 55, 180 and 280 cm3"},
	{"containers", "cell-60", "fill=60 mL", "Dumroese and others, New Forests 44:881, 2013: 60 to 336 mL"},
	{"containers", "cell-100", "fill=100 mL", nps},
	{"containers", "cell-115", "fill=115 mL", "Lisboa and others, Revista Árvore 36(4):603, 2012"},
	{"containers", "cell-180", "fill=180 mL", "Lisboa and others, Revista Árvore 36(4):603, 2012"},
	{"containers", "cell-200", "fill=200 mL", nps},
	{"containers", "cell-280", "fill=280 mL", "Lisboa and others, Revista Árvore 36(4):603, 2012"},
	{"containers", "cell-336", "fill=336 mL", "Dumroese and others, New Forests 44:881, 2013: 60 to 336 mL"},
	{"containers", "cell-672", "fill=41 cu in", "Appleton and Whitcomb, Southern Nursery Conferences, 1982: 41 cu in"},
	{"containers", "tray-18", "cells=18; fill=306.4 mL", plugs},
	{"containers", "tray-32", "cells=32; fill=181.1 mL", plugs},
	{"containers", "tray-35", "cells=35; fill=120 mL", "Vagnoni and others, Horticultura Argentina 33(80):15, 2014"},
	{"containers", "tray-36", "cells=36; low=95 mL; fill=115 mL; high=130 mL", "from memory"},
	{"containers", "tray-40", "cells=40; fill=93 mL", "Aldrete, Envases, lessons on forest nurseries, Mexico"},
	{"containers", "tray-48", "cells=48; low=65 mL; fill=80 mL; high=95 mL", "from memory"},
	{"containers", "tray-50", "cells=50; low=53 mL; fill=100.6 mL; high=115 mL", plugs + ": 100.6 mL; Seo and others, Acta Hort. 1273:329, 2020: 53 mL; the most is from memory"},
	{"containers", "deep-50", "cells=50; fill=195 mL", plugs},
	{"containers", "tray-72", "cells=72; low=38 mL; fill=56 mL; high=72 mL", ashs + ": 56 mL; " + plugs + ": 4.38 cu in, 71.8 mL; the least is from memory"},
	{"containers", "tray-98", "cells=98; fill=35 mL", ashs},
	{"containers", "tray-105", "cells=105; low=20 mL; fill=24 mL; high=28 mL", "from memory"},
	{"containers", "tray-126", "cells=126; fill=40 mL", "Vagnoni and others, Horticultura Argentina 33(80):15, 2014"},
	{"containers", "tray-128", "cells=128; low=19 mL; fill=24 mL; high=28 mL", ashs + ": 28 mL; " + dianthus + ": 20 mL; the least is from memory"},
	{"containers", "tray-162", "cells=162; fill=20 mL", ashs},
	{"containers", "tray-200", "cells=200; low=8 mL; fill=12 mL; high=20 mL", "from memory, between cells of 162 and 242 a tray: " + ashs},
	{"containers", "tray-220", "cells=220; fill=12 mL", "Sci. Rep. Fac. Agric. Okayama Univ. 88(1)"},
	{"containers", "tray-228", "cells=228; fill=20 mL", "Vagnoni and others, Horticultura Argentina 33(80):15, 2014"},
	{"containers", "tray-242", "cells=242; fill=10 mL", ashs},
	{"containers", "tray-286", "cells=286; fill=18 mL", "Gómez and Oberpaur, Ciencia e Investigación Agraria 34(3):205, 2007"},
	{"containers", "tray-288", "cells=288; low=5.5 mL; fill=6.4 mL; high=7 mL", ashs + ": 6.4 mL; the range is from memory"},
	{"containers", "tray-406", "cells=406; fill=6 mL", dianthus},
	{"containers", "tray-432", "cells=432; fill=10 mL", "Gómez and Oberpaur, Ciencia e Investigación Agraria 34(3):205, 2007"},
	{"containers", "tray-448", "cells=448; fill=6 mL", "Sci. Rep. Fac. Agric. Okayama Univ. 88(1)"},
	{"containers", "tray-512", "cells=512; low=2 mL; fill=3 mL; high=4 mL", "from memory"},
	{"containers", "tray-814", "cells=814; fill=5 mL", "Gómez and Oberpaur, Ciencia e Investigación Agraria 34(3):205, 2007"},
	{"containers", "flat", "low=360 cu in; fill=400 cu in; high=484 cu in", "common practice; UF/IFAS EDIS EP109 has the outside, 21 x 11 x 2 1/2 in"},
	{"containers", "flat-2.5", "low=420 cu in; fill=480 cu in; high=577.5 cu in", "common practice; UF/IFAS EDIS EP109 has the outside, 21 x 11 x 2 1/2 in"},
	{"containers", "flat-1", "low=160 cu in; fill=180 cu in; high=200 cu in", "common practice"},
	{"containers", "flat-10", "low=180 cu in; fill=200 cu in; high=242 cu in", "common practice"},

	{"materials", "bark-chunks", "dry=354 lb/cu yd; wet=607 lb/cu yd; packs=1 cu ft, 2 cu ft, 3 cu ft; bulk=true; traits=dust",
		"Pacific Bulb Society, Growing Medium table: 0.21 and 0.36 g/cm3; packs are common practice"},
	{"materials", "bark-fines", "dry=303 lb/cu yd; wet=1112 lb/cu yd; packed_low=303 lb/cu yd; packed_high=758 lb/cu yd; packs=1 cu ft, 1.5 cu ft, 2 cu ft, 3 cu ft; bulk=true; traits=dust, woody",
		"Int. J. Agronomy 2012:978528, Table 1: 0.18 g/cm3 and 48 % water; packs are common practice; as sold: dried out to three fifths water by weight, common practice"},
	{"materials", "bark-mulch", "dry=400 lb/cu yd; wet=800 lb/cu yd; packed_low=243 lb/cu yd; packed_high=608 lb/cu yd; " + mulchFigures + "; packs=2 cu ft, 3 cu ft; bulk=true; traits=dust, mulch, woody",
		mulchSource},
	{"materials", "coir", "dry=0.04 g/cm3; wet=1483 lb/cu yd; packed_low=0.04 g/cm3; packed_high=0.2 g/cm3; packs=1.5 cu ft, 2 cu ft; bulk=false; traits=dust; " +
		"bales=9.9 L, 1.3 L; opens_low=6.06; opens_high=7.58; baled=505 kg/m3",
		"a garden page: a block of 30 x 30 x 11 cm and 5 kg makes 60 to 75 L; HortScience 59(10):1477, 2024, as potted; Evans and others, HortScience 31, 1996: 0.08 and 80 % water; packs are common practice; as sold: dried out to three fifths water by weight, common practice"},
	{"materials", "compost", "dry=800 lb/cu yd; wet=1600 lb/cu yd; packs=1 cu ft, 2 cu ft; bulk=true; traits=legionella, salt",
		"state composting bodies, as sold; NSW Health 2018; Oregon State Univ. EM 9308; packs are common practice"},
	{"materials", "gravel", "dry=2600 lb/cu yd; wet=3120 lb/cu yd; packs=1/2 cu ft; bulk=true; traits=dust",
		"CalRecycle, Weights and Volumes for Project Estimates; 20 % more when wet; the pack is common practice"},
	{"materials", "hardwood-mulch", "dry=400 lb/cu yd; wet=800 lb/cu yd; packed_low=243 lb/cu yd; packed_high=608 lb/cu yd; " + mulchFigures + "; packs=2 cu ft, 3 cu ft; bulk=true; traits=dust, mulch, woody",
		mulchSource},
	{"materials", "peat", "dry=185 lb/cu yd; wet=1652 lb/cu yd; packed_low=278 lb/cu yd; packed_high=500 lb/cu yd; " +
		"opens_low=1.5; opens_high=2; bales=1 cu ft, 2.2 cu ft, 3 cu ft, 3.8 cu ft, 5.5 cu ft, 107 L, 156 L, 250 L; bales_from=107 L; packs=; bulk=false; traits=dust",
		"Int. J. Agronomy 2012:978528, Table 1: 0.11 g/cm3 and 87 % water; Univ. of Arkansas FSA6097: fluffed it gains 50 to 100 %; " +
			"Northeast Organic Farming Association, soil book, Appendix A: 500 lb/cu yd as sold, and 1.5 x 185; bales are common practice"},
	{"materials", "perlite", "dry=0.03 g/cm3; wet=919 lb/cu yd; packed_low=0.03 g/cm3; packed_high=320 lb/cu yd; packs=8 dry qt, 2 cu ft, 4 cu ft; bulk=false; traits=dust",
		"Frontiers in Plant Science 5:625, 2014, Table 4: 105 kg/m3 and 44 % water; Korean J. Soil Sci. Fert. 54(3):276, 2021: from 0.03 g/cm3; packs are common practice"},
	{"materials", "potting-mix", "dry=182 lb/cu yd; wet=1328 lb/cu yd; packed_low=182 lb/cu yd; packed_high=636 lb/cu yd; packs=16 dry qt, 1 cu ft, 2 cu ft, 64 dry qt; bulk=true; traits=dust, legionella",
		"Univ. of Arkansas, Greenhouse Management Online, Unit 7, Table 1: 0.108 g/cm3 and 68 % water; packs are common practice; as sold: to 3 bark, 1 peat, 1 perlite with three fifths water by weight, common practice"},
	{"materials", "pumice", "dry=431 kg/m3; wet=1001 kg/m3; packed_low=431 kg/m3; packed_high=647 kg/m3; packs=1/2 cu ft, 1 cu ft; bulk=true; traits=dust",
		"Frontiers in Plant Science 5:625, 2014, Table 4: 431 kg/m3 and 57 % water; packs are common practice; as sold: to a third water by weight, common practice"},
	{"materials", "sand", "dry=2400 lb/cu yd; wet=3120 lb/cu yd; packed_low=2400 lb/cu yd; packed_high=2880 lb/cu yd; packs=1/2 cu ft; bulk=true; traits=dust, sand",
		"CalRecycle, Weights and Volumes for Project Estimates; the pack is common practice; 20 % more when damp"},
	{"materials", "topsoil", "dry=2100 lb/cu yd; wet=3000 lb/cu yd; packed_low=1440 lb/cu yd; packed_high=2700 lb/cu yd; packs=3/4 cu ft, 1 cu ft; bulk=true; traits=legionella, soil",
		"CalRecycle, Weights and Volumes for Project Estimates: earth; packs are common practice; as sold: 40 lb in 3/4 cu ft is common practice, the high figure from memory"},
	{"materials", "vermiculite", "dry=108 lb/cu yd; wet=1000 lb/cu yd; packed_low=108 lb/cu yd; packed_high=270 lb/cu yd; packs=8 dry qt, 2 cu ft, 4 cu ft; bulk=false; traits=dust",
		"Frontiers in Plant Science 5:625, 2014, Table 4: from 70 kg/m3; the rest is from memory or common practice"},
	{"materials", "wood-chips", "dry=243 lb/cu yd; wet=800 lb/cu yd; packed_low=243 lb/cu yd; packed_high=608 lb/cu yd; " + mulchFigures + "; packs=2 cu ft; bulk=true; traits=dust, mulch, woody",
		"Oregon DEQ survey factors, dry; wet is from memory; settling as of bark mulch; the pack is common practice"},
	{"materials", "wood-fiber", "dry=87 kg/m3; wet=287 kg/m3; packed_low=87 kg/m3; packed_high=218 kg/m3; packs=2 cu ft, 3 cu ft; bulk=false; traits=dust, woody",
		"Frontiers in Plant Science 5:625, 2014, Table 4: 87 kg/m3 and 20 % water; packs are common practice; as sold: dried out to three fifths water by weight, common practice"},
	{"materials", "bark-nuggets", "dry=240 kg/m3; wet=800 lb/cu yd; packs=2 cu ft, 3 cu ft; bulk=true; traits=dust, mulch, woody; settle_low=10%; settle_high=25%",
		"tables of bulk materials: bark refuse, 15 lb/cu ft or 240 kg/m3; CalRecycle, chips and bark with soil; settling as of bark mulch; packs are common practice"},
	{"materials", "biochar", "dry=208 kg/m3; wet=800 kg/m3; packs=1 cu ft, 2 cu ft; bulk=true; traits=dust",
		"tables of bulk materials: charcoal, 208 kg/m3; wet and packs are common practice"},
	{"materials", "coir-chips", "dry=41 kg/m3; wet=206 kg/m3; packs=2 cu ft; bulk=false; traits=dust",
		"Noguera and others 2003, as restated: over 2 mm, 0.041 g/cm3 and 165 mL/L; the pack is common practice"},
	{"materials", "composted-bark", "dry=0.18 g/cm3; wet=0.763 g/cm3; packs=1 cu ft, 2 cu ft; bulk=true; traits=dust, legionella, woody",
		"Int. J. Agronomy 2012:978528, Table 1: 0.18 and 48 % water; VTechWorks 97261: 21.4 % more when aged; packs are common practice"},
	{"materials", "cow-compost", "dry=1000 lb/cu yd; wet=1700 lb/cu yd; packs=1 cu ft; bulk=true; traits=legionella, salt",
		nofa + ": compost about 1000, other manures 1700 lb/cu yd; the pack is common practice"},
	{"materials", "crushed-stone", "dry=2600 lb/cu yd; wet=3120 lb/cu yd; packs=1/2 cu ft; bulk=true; traits=dust",
		"CalRecycle, Weights and Volumes for Project Estimates: 2600, and 20 % more when wet; the pack is common practice"},
	{"materials", "expanded-clay", "dry=250 kg/m3; wet=1458 lb/cu yd; packs=1 cu ft, 2 cu ft; bulk=false; traits=dust",
		"Wikipedia, Expanded clay aggregate: from 250 kg/m3; Univ. of Washington, light weight soils: 54 lb/cu ft saturated, x 27; packs are common practice"},
	{"materials", "expanded-shale", "dry=1188 lb/cu yd; wet=1566 lb/cu yd; packs=1/2 cu ft, 1 cu ft; bulk=true; traits=dust",
		"Univ. of Washington, light weight soils: 44 and 58 lb/cu ft, x 27; packs are common practice"},
	{"materials", "garden-mix", "dry=1450 lb/cu yd; wet=2300 lb/cu yd; packs=1 cu ft; bulk=true; traits=legionella, salt, soil",
		"arithmetic: half of topsoil and half of compost; the pack is common practice"},
	{"materials", "green-compost", "dry=1000 lb/cu yd; wet=1350 lb/cu yd; packs=1 cu ft, 2 cu ft; bulk=true; traits=legionella, salt",
		nofa + ": 1000 lb/cu yd; Massachusetts recycling regulations, as quoted: 1350; packs are common practice"},
	{"materials", "hen-compost", "dry=1000 lb/cu yd; wet=900 kg/m3; packs=1 cu ft; bulk=true; traits=legionella, salt",
		nofa + ": broiler manure 1000 lb/cu yd; Agnew and Leonard 2003, as quoted: to 900 kg/m3 wet; the pack is common practice"},
	{"materials", "horse-compost", "dry=800 lb/cu yd; wet=900 kg/m3; packs=1 cu ft; bulk=true; traits=legionella, salt",
		nofa + ": horse manure 800 lb/cu yd; Agnew and Leonard 2003, as quoted: to 900 kg/m3 wet; the pack is common practice"},
	{"materials", "lava-rock", "dry=840 kg/m3; wet=1026 kg/m3; packs=1/2 cu ft; bulk=true; traits=dust",
		"Luque-Escalona, Acta Hort. 126:51, 1982: 0.84 g/mL and 18.6 % water; the pack is common practice"},
	{"materials", "leaf-mold", "dry=100 kg/m3; wet=900 kg/m3; packs=1 cu ft; bulk=true; traits=legionella",
		"Agnew and Leonard 2003, as quoted: 100 dry to 900 kg/m3 wet; the pack is common practice"},
	{"materials", "leaves", "dry=250 lb/cu yd; wet=500 lb/cu yd; packs=4 cu ft; bulk=true; traits=mulch; settle_low=10%; settle_high=25%",
		"Oregon DEQ, materials recovery survey: 250 to 500 lb/cu yd; settling as of bark mulch; the pack is common practice"},
	{"materials", "mushroom-soil", "dry=545 kg/m3; wet=900 kg/m3; packs=1 cu ft, 2 cu ft; bulk=true; traits=legionella, salt",
		"Irish J. Agric. Food Res., ijafr-2020-0121: from 0.545 g/cm3; Agnew and Leonard 2003, as quoted: to 900 kg/m3 wet; packs are common practice"},
	{"materials", "pine-chips", "dry=0.22 g/cm3; wet=0.79 g/cm3; packs=2 cu ft; bulk=true; traits=dust, woody",
		"Int. J. Agronomy 2012:978528, Table 1, chip residual of 0.48 cm: 0.22 g/cm3 and 57 % water; the pack is common practice"},
	{"materials", "pine-straw", "dry=60 lb/cu yd; wet=250 lb/cu yd; packs=; bulk=false; traits=mulch; bales=4 cu ft; opens_low=25/12; opens_high=2.5; packed_low=126 lb/cu yd; packed_high=235 lb/cu yd; settle_low=10%; settle_high=25%",
		"a page on pine straw: 14 lb in 3 cu ft to 20 lb in 2.3; a supplier: 4 cu ft cover 40 sq ft 2 1/2 in deep; the rest is common practice"},
	{"materials", "rice-hulls", "dry=102.2 kg/m3; wet=330 kg/m3; packs=2 cu ft; bulk=false; traits=dust",
		"a table of rice husks, 102.2 kg/m3; wet and the pack are common practice"},
	{"materials", "rock-wool", "dry=49 kg/m3; wet=989 kg/m3; packs=2 cu ft; bulk=false; traits=dust",
		"Frontiers in Plant Science 5:625, 2014, Table 4: 49 kg/m3 and 94 % water; the pack is common practice"},
	{"materials", "sawdust", "dry=300 lb/cu yd; wet=566 lb/cu yd; packs=3 cu ft; bulk=true; traits=dust, woody",
		nofa + ": 300 lb/cu yd; Briggs 1994, Table 7-2: 251 kg/m3 green to 133 dry; the pack is common practice"},
	{"materials", "sedge-peat", "dry=560 kg/m3; wet=1060 kg/m3; packs=1 cu ft, 2 cu ft; bulk=true; traits=dust",
		"USGS commodity report, as restated: reed-sedge from 560, humus to 1060 kg/m3; packs are common practice"},
	{"materials", "sphagnum-moss", "dry=18 kg/m3; wet=770 kg/m3; packs=1 cu ft; bulk=false; traits=dust",
		"Golubev and others 2018: from 0.018 g/cm3; McCarter and others 2014: 0.033 and 73.7 % water at 7.6 cm; the pack is common practice"},
	{"materials", "straw", "dry=24 kg/m3; wet=111 kg/m3; packs=; bulk=false; traits=dust, mulch; bales=5.2 cu ft; opens_low=2.34; opens_high=2.564; packed_low=208 lb/cu yd; packed_high=234 lb/cu yd; settle_low=10%; settle_high=25%",
		"Lam and others: 24 to 111 kg/m3; " + nofa + ": a bale of 14 x 20 x 32 in of 40 lb, 208 lb/cu yd; 45 lb is common practice; a page: a bale covers 73 to 80 sq ft 2 in deep"},
	{"materials", "wood-mulch", "dry=300 lb/cu yd; wet=800 lb/cu yd; packs=2 cu ft, 3 cu ft; bulk=true; traits=dust, mulch, woody; settle_low=10%; settle_high=25%",
		"CalRecycle, Weights and Volumes for Project Estimates: chips, shredded and dry 300, with bark and soil 800; settling as of bark mulch; packs are common practice"},
	{"materials", "worm-castings", "dry=500 kg/m3; wet=900 kg/m3; packs=1/2 cu ft, 1 cu ft; bulk=false; traits=legionella, salt",
		"Agnew and Leonard 2003, as quoted: composts of 500 to 900 kg/m3 wet; packs are common practice"},

	{"mixes", "bark-peat", "parts=bark-fines 1, peat 1", "Univ. of Arkansas, Greenhouse Management Online, Unit 7, Table 1"},
	{"mixes", "peat-lite", "parts=peat 2, perlite 1, vermiculite 1", "Univ. of Arkansas, Greenhouse Management Online, Unit 7, Table 1"},
	{"mixes", "potting", "parts=bark-fines 3, peat 1, perlite 1", "common practice"},
	{"mixes", "rooting", "parts=peat 1, perlite 1", "equal parts are named by several extension texts"},

	{"soils", "clay", "swell=40%; swell_low=20%; swell_high=60%",
		"B. Roseke, Swell Factors for Various Soils, Project Engineer; Construction Planning, Equipment and Methods, Table 4-1: 30 to 60 %; Estimating in Building Construction, Figure 9.1: 20 to 35 %"},
	{"soils", "loam", "swell=25%; swell_low=10%; swell_high=45%",
		"B. Roseke, Swell Factors for Various Soils, Project Engineer; Construction Planning, Equipment and Methods, Table 4-1: loamy soil from 10 %, common earth to 45 %"},
	{"soils", "sandy", "swell=12%; swell_low=5%; swell_high=18%",
		"B. Roseke, Swell Factors for Various Soils, Project Engineer; Construction Planning, Equipment and Methods, Table 4-1: from 5 %; Estimating in Building Construction, Figure 9.1: to 18 %"},
}

const (
	z60          = "ANSI Z60.1 (2004, 2014), container classes, from memory; the brim is the middle"
	nps          = "National Plant Specification (UK): named by the litres to the brim, or cells by their cc"
	rims         = "a garden writer's table of pots by width, the most; Star Nursery, Star-Tip 1026, 2006, and two garden pages, the least; the brim lies between"
	squares      = "Acme Hydroponics, Container Capacities; a nursery's pot size chart: 0.49 and 1 pint"
	clothNamed   = "common practice: named by the US gallons to the brim"
	bands        = "common practice: by the outside size, less a tenth for the taper"
	nofa         = "Northeast Organic Farming Association, soil book, Appendix A"
	plugs        = "a wholesale nursery's page of its plug sizes"
	ashs         = "American Society for Horticultural Science, annual conference 2010, paper 4609"
	dianthus     = "transplants of Dianthus caryophyllus and Gypsophila paniculata in cell trays, abstract"
	mulchFigures = "settle_low=10%; settle_high=25%"
	mulchSource  = "extension texts, moist, from memory; as sold from dry chips, Oregon DEQ survey factors, to three fifths water by weight, common practice; UF/IFAS: bags of 2 or 3 cu ft; settling: 10 % is common practice, " +
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
	swell   map[string]spread
	common  map[string]exact // allowances
}

var trade = sync.OnceValue(func() *tradeRows {
	c := &tradeRows{map[string]modelPot{}, map[string]modelMix{}, map[string][2]exact{},
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
		pot := modelPot{id, cells.ceil(), row(figures["fill"]), row(figures["low"]), row(figures["high"])}
		c.pots[id] = pot.filled(row(figures["brim"]))
	case "materials":
		c.density[id] = [2]exact{density(figures["dry"]), density(figures["wet"])}
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

// filled gives a pot with a brim its fill line, 172.8 parts of 183, and a row
// without a range a tenth to either side, a pot up to its brim.
func (p modelPot) filled(brim *typed) modelPot {
	part := func(of *typed, n, d int64) *typed { return &typed{"", of.value.times(exactly(n, d)).whole(nanolitre)} }
	if brim != nil {
		p.holds = part(brim, 1728, 1830)
		if p.high == nil || p.high.value.rat.Cmp(brim.value.rat) < 0 {
			p.high = brim
		}
	}
	if p.low == nil {
		p.low = part(p.holds, 9, 10)
	}
	if p.high == nil {
		p.high = part(p.holds, 11, 10)
	}
	return p
}

// row reads the volume of a container, nil when there is none.
func row(s string) *typed {
	if s == "" {
		return nil
	}
	number, unit, _ := strings.Cut(s, " ")
	size := map[string]exact{"cu in": decimal("16387.064"), "mL": exactly(1000, 1), "L": exactly(1_000_000, 1),
		"gal": decimal("3785411.784"), "liq qt": decimal("946352.946"), "dry qt": decimal("67.200625").times(decimal("16387.064"))}[unit]
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
