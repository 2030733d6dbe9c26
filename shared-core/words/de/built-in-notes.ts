/** The notes on species and uses that come with the program, and its curves that have no species' name, by their English. */
export const builtInNotes = {
  // Curves.
  'name:Ash': 'Esche',
  'name:Birch': 'Birke',
  'name:True hickory': 'Echte Hickory',
  'name:Magnolia': 'Magnolie',
  'name:Commercial red oak': 'Roteiche des Handels',
  'name:Commercial white oak': 'Weißeiche des Handels',

  // Species.
  'name:For redwood of unknown age. Figures are means of old and young growth.':
    'Für Redwood unbekannten Alters. Die Zahlen sind Mittel aus altem und jungem Holz.',
  'name:For boards sold as Douglas-fir. Figures are means of 3 growing regions. The curve is that of coast Douglas-fir.':
    'Für Bretter, die als Douglasie verkauft werden. Die Zahlen sind Mittel aus 3 Herkünften. Die Kennlinie ist die der Küsten-Douglasie.',
  'name:For boards sold as aspen. Figures are means of 2 species.':
    'Für Bretter, die als amerikanische Aspe verkauft werden. Die Zahlen sind Mittel aus 2 Arten.',
  'name:Longleaf and shortleaf pine have resistance curves, but this species has none.':
    'Für Sumpfkiefer und Fichtenkiefer gibt es Kennlinien, für diese Art nicht.',
  'name:For boards sold as spruce. Figures are means of 4 species.':
    'Für Bretter, die als amerikanische Fichte verkauft werden. Die Zahlen sind Mittel aus 4 Arten.',
  'name:The curve is flat above 22%, so it is used up to 20%.':
    'Die Kennlinie ist über 22 % flach. Sie wird deshalb bis 20 % verwendet.',
  'name:Called sycamore in Britain. It is no kin of American sycamore.':
    'In Großbritannien „sycamore“ genannt. Mit der amerikanischen Platane ist er nicht verwandt.',
  'name:For boards sold as birch. Figures are means of 3 species.':
    'Für Bretter, die als amerikanische Birke verkauft werden. Die Zahlen sind Mittel aus 3 Arten.',
  'name:Distorts more than most species as it dries.':
    'Verzieht sich beim Trocknen mehr als die meisten Holzarten.',
  'name:The curve is for birch in general.': 'Die Kennlinie gilt für Birke allgemein.',
  'name:For boards sold as soft maple. Figures are means of 3 species.':
    'Für Bretter, die als weicher Ahorn verkauft werden. Die Zahlen sind Mittel aus 3 Arten.',
  'name:The curve may be that of black ash.': 'Die Kennlinie ist vielleicht die der Schwarzesche.',
  'name:For boards sold as southern pine. Figures are means of 4 species. The curve is that of shortleaf pine; that of longleaf is within 0.4 points.':
    'Für Bretter, die als Southern Pine verkauft werden. Die Zahlen sind Mittel aus 4 Arten. Die Kennlinie ist die der Fichtenkiefer; die der Sumpfkiefer weicht höchstens 0,4 Prozentpunkte ab.',
  'name:For boards sold as elm. Figures are means of 2 species. Rock, winged and cedar elm are harder.':
    'Für Bretter, die als amerikanische Ulme verkauft werden. Die Zahlen sind Mittel aus 2 Arten. Felsenulme, Geflügelte Ulme und Zedernulme sind härter.',
  'name:For boards sold as ash. Figures are means of 5 species. The curve may be that of black ash.':
    'Für Bretter, die als amerikanische Esche verkauft werden. Die Zahlen sind Mittel aus 5 Arten. Die Kennlinie ist vielleicht die der Schwarzesche.',
  'name:Sold with sugar maple as hard maple, so it uses the sugar maple curve.':
    'Wird zusammen mit Zuckerahorn als harter Ahorn verkauft und hat deshalb dessen Kennlinie.',
  'name:For boards sold as red oak. Figures are means of 9 species.':
    'Für Bretter, die als amerikanische Roteiche verkauft werden. Die Zahlen sind Mittel aus 9 Arten.',
  'name:Far denser than commercial white oak, so that curve is not used.':
    'Viel dichter als die Weißeiche des Handels. Deren Kennlinie wird deshalb nicht verwendet.',
  'name:For boards sold as white oak. Figures are means of 7 species.':
    'Für Bretter, die als amerikanische Weißeiche verkauft werden. Die Zahlen sind Mittel aus 7 Arten.',
  'name:A pecan hickory, so the true hickory curve is not used.':
    'Eine Pekan-Hickory. Die Kennlinie der echten Hickory wird deshalb nicht verwendet.',
  'name:For boards sold as hard maple. Figures are means of 2 species.':
    'Für Bretter, die als harter Ahorn verkauft werden. Die Zahlen sind Mittel aus 2 Arten.',
  'name:For boards sold as hickory. Figures are means of 4 species. Pecan is its own species.':
    'Für Bretter, die als Hickory verkauft werden. Die Zahlen sind Mittel aus 4 Arten. Pekan ist eine eigene Holzart.',
  'name:The only published curve is for coast Douglas-fir.':
    'Die einzige veröffentlichte Kennlinie ist die der Küsten-Douglasie.',
  'name:The curve is for magnolia in general.': 'Die Kennlinie gilt für Magnolie allgemein.',

  // Uses.
  'name:Let it acclimate in the shop before machining.':
    'Vor der Bearbeitung in der Werkstatt an das Raumklima angleichen.',
  'name:For pieces that may move a little.': 'Für Stücke, die etwas arbeiten dürfen.',
  'name:Aim for an average of 8%.': 'Ein Mittel von 8 % anstreben.',
  'name:Aim for an average of 6%. Pin meters tell little below 6%.':
    'Ein Mittel von 6 % anstreben. Unter 6 % sagen Messgeräte mit Spitzen wenig.',
  'name:Aim for an average of 11%.': 'Ein Mittel von 11 % anstreben.',
  'name:Aim for an average of 12%.': 'Ein Mittel von 12 % anstreben.',
  'name:Aim for an average of 9%.': 'Ein Mittel von 9 % anstreben.',
  'name:Dry enough to leave the yard, but not for indoor work.':
    'Trocken genug für den Verkauf ab Platz, aber nicht für den Innenausbau.',
  'name:Moisture content says nothing about strength. Structural use needs graded lumber.':
    'Die Holzfeuchte sagt nichts über die Festigkeit. Tragende Bauteile brauchen sortiertes Holz.',
  'name:Split a piece and probe the fresh face.': 'Ein Stück spalten und auf der frischen Fläche messen.',
} as const;
