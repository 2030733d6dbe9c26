/** The pieces of the sources of what comes with the program, by their English. Titles and authors stay as published. */
export const sources = {
  'name:20 °C is from memory': '20 °C aus dem Gedächtnis',
  'name:A log-log fit of this row, published from a scan of it, agrees with every cell to its last digit':
    'Eine doppelt logarithmische Anpassung dieser Zeile, nach einem Scan veröffentlicht, stimmt mit jeder Zelle bis zur letzten Stelle überein',
  'name:A log-log fit of this row, published from a scan of it, agrees with the cells to 24% and gives that of 25%':
    'Eine doppelt logarithmische Anpassung dieser Zeile, nach einem Scan veröffentlicht, stimmt mit den Zellen bis 24 % überein und ergibt die bei 25 %',
  'name:Along the grain, two pairs of needle electrodes 1 1/4 in apart driven 5/16 in deep':
    'In Faserrichtung, zwei Paare von Nadelelektroden, 1 1/4 Zoll auseinander und 5/16 Zoll tief eingeschlagen',
  'name:Change coefficients: German timber trade association (holzhandel.de, differential shrinkage)':
    'Schwindmaße je Prozentpunkt: Verband des deutschen Holzhandels (holzhandel.de, differentielle Schwindung)',
  'name:Change coefficients: Wood Handbook, Table 13-5':
    'Schwindmaße je Prozentpunkt: Wood Handbook, Tabelle 13-5',
  'name:Change coefficients: Wood Handbook, Table 13-5, as listed in open code':
    'Schwindmaße je Prozentpunkt: Wood Handbook, Tabelle 13-5, wie in offenem Code aufgeführt',
  'name:Change coefficients: from shrinkage, by the formula of the Wood Handbook':
    'Schwindmaße je Prozentpunkt: aus der Schwindung, nach der Formel des Wood Handbook',
  'name:Change coefficients: means measured by Bauwerk Parkett':
    'Schwindmaße je Prozentpunkt: Mittelwerte, gemessen von Bauwerk Parkett',
  'name:Common practice, no source': 'Übliche Praxis, ohne Quelle',
  'name:EN 942, external joinery': 'EN 942, Tischlerarbeiten im Außenbereich',
  'name:EN 942, heated buildings, the cooler of two classes':
    'EN 942, beheizte Gebäude, die kühlere von zwei Klassen',
  'name:Forsen and Tarvainen, Accuracy and Functionality of Hand Held Wood Moisture Content Meters, VTT Publications 420 (2000), Table 5, by a log-log fit published in open code':
    'Forsén und Tarvainen, Accuracy and Functionality of Hand Held Wood Moisture Content Meters, VTT Publications 420 (2000), Tabelle 5, nach einer doppelt logarithmischen Anpassung in offenem Code',
  'name:From memory the row is commercial white ash':
    'Aus dem Gedächtnis: Die Zeile ist die der Weißesche des Handels',
  'name:Its published fit is within 0.25 points from 8% to 16%':
    'Ihre veröffentlichte Anpassung liegt von 8 % bis 16 % um höchstens 0,25 Prozentpunkte daneben',
  'name:No resistance curve is given in these sources': 'Diese Quellen enthalten keine Kennlinie',
  'name:Resistance curve: James 1988, American elm': 'Kennlinie: James 1988, Weißulme',
  'name:Resistance curve: James 1988, American mahogany': 'Kennlinie: James 1988, Amerikanisches Mahagoni',
  'name:Resistance curve: James 1988, Baldcypress': 'Kennlinie: James 1988, Sumpfzypresse',
  'name:Resistance curve: James 1988, Basswood': 'Kennlinie: James 1988, Amerikanische Linde',
  'name:Resistance curve: James 1988, Birch': 'Kennlinie: James 1988, Birke',
  'name:Resistance curve: James 1988, Black tupelo': 'Kennlinie: James 1988, Waldtupelo',
  'name:Resistance curve: James 1988, Black walnut': 'Kennlinie: James 1988, Amerikanischer Nussbaum',
  'name:Resistance curve: James 1988, California red fir': 'Kennlinie: James 1988, Prachttanne',
  'name:Resistance curve: James 1988, Coast Douglas-fir': 'Kennlinie: James 1988, Küsten-Douglasie',
  'name:Resistance curve: James 1988, Commercial red oak': 'Kennlinie: James 1988, Roteiche des Handels',
  'name:Resistance curve: James 1988, Commercial white oak': 'Kennlinie: James 1988, Weißeiche des Handels',
  'name:Resistance curve: James 1988, Eastern white pine': 'Kennlinie: James 1988, Weymouthskiefer',
  'name:Resistance curve: James 1988, Longleaf pine': 'Kennlinie: James 1988, Sumpfkiefer',
  'name:Resistance curve: James 1988, Magnolia': 'Kennlinie: James 1988, Magnolie',
  'name:Resistance curve: James 1988, Ponderosa pine': 'Kennlinie: James 1988, Gelbkiefer',
  'name:Resistance curve: James 1988, Redwood': 'Kennlinie: James 1988, Redwood',
  'name:Resistance curve: James 1988, Shortleaf pine': 'Kennlinie: James 1988, Fichtenkiefer',
  'name:Resistance curve: James 1988, Sitka spruce': 'Kennlinie: James 1988, Sitka-Fichte',
  'name:Resistance curve: James 1988, Sugar maple': 'Kennlinie: James 1988, Zuckerahorn',
  'name:Resistance curve: James 1988, Sugar pine': 'Kennlinie: James 1988, Zuckerkiefer',
  'name:Resistance curve: James 1988, Sweetgum': 'Kennlinie: James 1988, Amberbaum',
  'name:Resistance curve: James 1988, True hickory': 'Kennlinie: James 1988, Echte Hickory',
  'name:Resistance curve: James 1988, Western hemlock': 'Kennlinie: James 1988, Westliche Hemlocktanne',
  'name:Resistance curve: James 1988, Western larch': 'Kennlinie: James 1988, Westamerikanische Lärche',
  'name:Resistance curve: James 1988, White fir': 'Kennlinie: James 1988, Coloradotanne',
  'name:Resistance curve: James 1988, Yellow-poplar': 'Kennlinie: James 1988, Tulpenbaum',
  'name:Resistance curve: James 1988, ash': 'Kennlinie: James 1988, Esche',
  'name:Resistance curve: VTT Publications 420 (2000), by a published fit':
    'Kennlinie: VTT Publications 420 (2000), nach einer veröffentlichten Anpassung',
  'name:Shell–core limit and tolerance: common practice, no source':
    'Grenze des Feuchtegefälles und Toleranz: übliche Praxis, ohne Quelle',
  'name:Shrinkage: Buchenholz, Wikipedia, after German handbooks':
    'Schwindung: Buchenholz, Wikipedia, nach deutschen Handbüchern',
  'name:Shrinkage: Eschenholz, Wikipedia, after German handbooks':
    'Schwindung: Eschenholz, Wikipedia, nach deutschen Handbüchern',
  'name:Shrinkage: R. Wagenführ, Holzatlas': 'Schwindung: R. Wagenführ, Holzatlas',
  'name:Shrinkage: Wood Handbook, Table 4-3': 'Schwindung: Wood Handbook, Tabelle 4-3',
  'name:Shrinkage: Wood Handbook, Table 4-3, as listed in open code':
    'Schwindung: Wood Handbook, Tabelle 4-3, wie in offenem Code aufgeführt',
  'name:Shrinkage: Wood Handbook, Table 4-3, radial and tangential worked back from Table 13-5, volumetric':
    'Schwindung: Wood Handbook, Tabelle 4-3, radial und tangential aus Tabelle 13-5 zurückgerechnet, Volumen',
  'name:Shrinkage: Wood Handbook, Table 4-4': 'Schwindung: Wood Handbook, Tabelle 4-4',
  'name:Shrinkage: a flooring maker (topstyle-flooring.com)':
    'Schwindung: ein Hersteller von Fußböden (topstyle-flooring.com)',
  'name:Specific gravity and shrinkage: means of American elm, Slippery elm':
    'Raumdichte und Schwindung, Mittel dieser Arten: Weißulme und Rotulme',
  'name:Specific gravity and shrinkage: means of Black spruce, Red spruce, Engelmann spruce, Sitka spruce':
    'Raumdichte und Schwindung, Mittel dieser Arten: Schwarzfichte, Amerikanische Rotfichte, Engelmann-Fichte und Sitka-Fichte',
  'name:Specific gravity and shrinkage: means of Coast Douglas-fir, Interior north Douglas-fir, Interior west Douglas-fir':
    'Raumdichte und Schwindung, Mittel dieser Arten: Küsten-Douglasie, Binnenland-Douglasie (Norden) und Binnenland-Douglasie (Westen)',
  'name:Specific gravity and shrinkage: means of Loblolly pine, Longleaf pine, Shortleaf pine, Slash pine':
    'Raumdichte und Schwindung, Mittel dieser Arten: Weihrauchkiefer, Sumpfkiefer, Fichtenkiefer und Elliottkiefer',
  'name:Specific gravity and shrinkage: means of Northern red oak, Black oak, Cherrybark oak, Laurel oak, Pin oak, Scarlet oak, Southern red oak, Water oak, Willow oak':
    'Raumdichte und Schwindung, Mittel dieser Arten: Amerikanische Roteiche, Färbereiche, Pagodeneiche, Lorbeereiche, Sumpfeiche, Scharlacheiche, Sicheleiche, Wassereiche und Weideneiche',
  'name:Specific gravity and shrinkage: means of Old-growth redwood, Young-growth redwood':
    'Raumdichte und Schwindung, Mittel dieser Arten: Redwood (Altbestand) und Redwood (Jungbestand)',
  'name:Specific gravity and shrinkage: means of Quaking aspen, Bigtooth aspen':
    'Raumdichte und Schwindung, Mittel dieser Arten: Amerikanische Zitterpappel und Großzähnige Aspe',
  'name:Specific gravity and shrinkage: means of Red maple, Silver maple, Bigleaf maple':
    'Raumdichte und Schwindung, Mittel dieser Arten: Rotahorn, Silberahorn und Großblättriger Ahorn',
  'name:Specific gravity and shrinkage: means of Shagbark hickory, Shellbark hickory, Mockernut hickory, Pignut hickory':
    'Raumdichte und Schwindung, Mittel dieser Arten: Schindelborkige Hickory, Königsnuss-Hickory, Spottnuss-Hickory und Ferkelnuss-Hickory',
  'name:Specific gravity and shrinkage: means of Sugar maple, Black maple':
    'Raumdichte und Schwindung, Mittel dieser Arten: Zuckerahorn und Schwarzahorn',
  'name:Specific gravity and shrinkage: means of White ash, Green ash, Blue ash, Oregon ash, Black ash':
    'Raumdichte und Schwindung, Mittel dieser Arten: Weißesche, Grünesche, Blauesche, Oregon-Esche und Schwarzesche',
  'name:Specific gravity and shrinkage: means of White oak, Bur oak, Chestnut oak, Overcup oak, Post oak, Swamp chestnut oak, Swamp white oak':
    'Raumdichte und Schwindung, Mittel dieser Arten: Amerikanische Weißeiche, Klettenfrüchtige Eiche, Kastanieneiche, Leierblättrige Eiche, Pfahleiche, Korbeiche und Zweifarbige Eiche',
  'name:Specific gravity and shrinkage: means of Yellow birch, Sweet birch, Paper birch':
    'Raumdichte und Schwindung, Mittel dieser Arten: Gelbbirke, Zuckerbirke und Papierbirke',
  'name:Specific gravity: IPCC Good Practice Guidance 2003, Table 3A.1.9':
    'Raumdichte: IPCC Good Practice Guidance 2003, Tabelle 3A.1.9',
  'name:Specific gravity: IPCC Guidelines 2006, vol. 4, Table 4.14, by genus':
    'Raumdichte: IPCC Guidelines 2006, Bd. 4, Tabelle 4.14, nach Gattung',
  'name:Specific gravity: IPCC and Italian inventory values, as listed in open forestry code':
    'Raumdichte: Werte des IPCC und der italienischen Waldinventur, wie in offenem forstlichem Code aufgeführt',
  'name:Specific gravity: Liepins and others, Silva Fennica 51(5), 2017':
    'Raumdichte: Liepins und andere, Silva Fennica 51(5), 2017',
  'name:Specific gravity: U.S. Forest Service species file, after Research Note NRS-38':
    'Raumdichte: Artenliste des U.S. Forest Service, nach Research Note NRS-38',
  'name:Specific gravity: Wood Handbook, Table 5-3': 'Raumdichte: Wood Handbook, Tabelle 5-3',
  'name:Specific gravity: Wood Handbook, Table 5-3, as listed in open code':
    'Raumdichte: Wood Handbook, Tabelle 5-3, wie in offenem Code aufgeführt',
  'name:Specific gravity: common trade figure': 'Raumdichte: im Handel übliche Zahl',
  'name:Specific gravity: oven-dry density of Bauwerk Parkett, less the shrinkage':
    'Raumdichte: Darrdichte von Bauwerk Parkett, abzüglich der Schwindung',
  'name:Surfaced-dry lumber, 19% at most: Wood Handbook':
    'Trocken gehobeltes Schnittholz, höchstens 19 %: Wood Handbook',
  'name:Table 13-5, "Oak, black", is not used: it fits California black oak, by its shrinkage in Table 4-3':
    'Tabelle 13-5, „Oak, black“, wird nicht verwendet: Nach der Schwindung in Tabelle 4-3 passt sie zur Kalifornischen Schwarzeiche',
  'name:The table was not seen': 'Die Tabelle lag nicht vor',
  'name:W. L. James, Electric Moisture Meters for Wood, FPL-GTR-6 (1988), Table 1':
    'W. L. James, Electric Moisture Meters for Wood, FPL-GTR-6 (1988), Tabelle 1',
  'name:Wood Handbook, Table 13-2, individual pieces at installation':
    'Wood Handbook, Tabelle 13-2, einzelne Stücke beim Einbau',
  'name:a scan names it black ash': 'ein Scan nennt sie Schwarzesche',
  'name:older editions of the Wood Handbook have 0.37': 'ältere Ausgaben des Wood Handbook haben 0,37',
};
