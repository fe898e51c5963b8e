"""The names book: invented cultivars, one a line.

epithet | species (staghorns without their genus; /Group) | raiser | introduced | parents | comes true:
d by division only, s from spores, ? not known | where from | traits unlike the species' | note
"""

STAGHORNS = """
Ballroom Curtain|willinckii|Hilda|1981|willinckii x bifurcatum|d|in the raiser's lean-to||
Butcher's Awning|hillii|Oswin|c. 1985|hillii x bifurcatum|d|a mixed tray|medium|
Candle Snuffer|ridleyi|Widdershins Exotics|1999|P. ridleyi x P. coronarium|?|nursery sowing||slow
Clerestory|veitchii|Ada|1992|P. veitchii × P. willinckii|d|deliberate cross|many|
Cloud over Barrowdene|superbum|Rafael|2012|superbum x willinckii|?|mixed sowing|arching|see the crosses book
Coalman's Glove|alcicorne|Jonquil|2001|from spores of alcicorne|s|exchange packet|two, broad|
Cold Tea|bifurcatum|Mabel|before 1990||d|a jumble sale|erect|
Drowned Steeple|veitchii|Ada|2003|'Clerestory' x hillii|d|deliberate cross|ball|
Dusty Miller's Boots|elephantotis|Greenlatch Nursery|1994||s|nursery sowing|erect|
Eight Bells|wandae|Keiko|2014|from spores of wandae|s|exchange packet|many|
Ferryman's Beard|willinckii|Gwenllian|1997|sport of 'Ballroom Curtain'|d|a pup that forked finer|medium|
Four Poster|andinum|Rosalind|2008|andinum x veitchii|d|deliberate cross|erect|
Gallery of Whispers|coronarium|Widdershins Exotics|2005||?|imported as spores|broad|
Half a Crown|andinum|Tomasz|2013|P. andinum × P. alcicorne|?|mixed sowing|few|
Hearth Rug|bifurcatum|Wilhelmina|2000||d|found under the bench|broad, many|
Heron on One Leg|stemaria|Idris|2007|stemaria x ellisii|d|deliberate cross|erect|
Inkwell|ellisii|Fergal|2004|from spores of ellisii|s|own sowing|unforked|
Ironmonger|hillii|Greenlatch Nursery|1988||d|nursery selection|many|
Joiner's Bench|hillii|Hamish|2006|'Ironmonger' x veitchii|d|deliberate cross|narrow|
Lacemaker's Window|willinckii|Jonquil|2005|'Ferryman's Beard' x veitchii|d|deliberate cross||
Long Pew|grande|Esperanza|2016|from spores of grande|s|exchange packet|arching|
Magpie Larder|bifurcatum|Hilda|1986|bifurcatum x hillii|d|a mixed tray|erect, broad|
Midwinter Post|veitchii|Rosalind|2010|'Drowned Steeple' selfed|?|own sowing|basket|
Mouse in the Organ|madagascariense|Ferrantine|2011||?|nursery sowing|two|ants lived in it
Oilskin|alcicorne|Yusuf|2017|alcicorne x hillii|?|mixed sowing|broad|
Parson's Umbrella|superbum|Kofi|2020|from spores of superbum|s|exchange packet|few|
Pepperpot Lodge|hillii|Bram|2009|'Ironmonger' x 'Cold Tea'|d|deliberate cross|arching|
Rag and Bone|quadridichotomum|Nikhil|2019||?|exchange packet|few|drops everything when dry
Rook's Parliament|veitchii|Sunniva|2012|'Clerestory' x alcicorne|d|deliberate cross|many, ball|
Sailcloth|wallichii|Keiko|2011|from spores of wallichii|s|exchange packet|arching|
Scullery Maid|bifurcatum|Mabel|1993|sport of 'Cold Tea'|d|one pup with crested tips|many|
Slate Quarry Sunday|elephantotis|Idris|2015|elephantotis x stemaria|?|mixed sowing|two|
Tallow|holttumii|Esperanza|2018|from spores of holttumii|s|exchange packet|many|
Three Brass Monkeys|ridleyi|Rafael|2016|'Candle Snuffer' x ridleyi|?|deliberate cross|broad|
Umbrella Stand|hillii|Celeste|2014|'Pepperpot Lodge' x willinckii|d|deliberate cross|hanging|
Yesterday's Bread|bifurcatum|Ottoline|1995||d|a skip behind a shop|unforked|
"""

OTHER_FERNS = """
Bottlebrush Alley|Nephrolepis exaltata|Ferrantine|1996|sport of exaltata|d|nursery sport|twice divided|
Cobweb Bannister|Nephrolepis exaltata|Ferrantine|2002|sport of 'Bottlebrush Alley'|d|nursery sport|thrice divided|
Corduroy Knee|Nephrolepis cordifolia|Priya|2019||d|found in a hanging basket||
Dripping Tap|Nephrolepis exaltata|Lotte|2016|sport of 'Cobweb Bannister'|d|her window sill|thrice divided, triangular|
Hairpin Bend|Nephrolepis cordifolia|Leilani|2015||d|brought from her mother's porch|round|
Pigeon Post|Nephrolepis exaltata|Cobbledick & Daughters|1989|sport of exaltata|d|nursery sport|round|
Tumbledown Wall|Nephrolepis exaltata|Wendeline|2014|sport of 'Pigeon Post'|d|a single runner|twice divided, round|
Wet Dog|Nephrolepis cordifolia|Barnaby|2023|sport of 'Corduroy Knee'|d|his bathroom|twice divided|
Bride's Sixpence|Adiantum raddianum|Cobbledick & Daughters|1978||s|nursery sowing|round|
Confetti Drain|Adiantum raddianum|Marguerite|2006|from spores of 'Bride's Sixpence'|?|own sowing|twice divided|
Lost Earring|Adiantum capillus-veneris|Percival|1994||d|an old well-head|round|
Pocket Fluff|Adiantum raddianum|Lotte|2018|sport of 'Confetti Drain'|d|one crown|thrice divided, round|
Rain on Felt|Adiantum raddianum|Sunniva|2011||s|own sowing||
Stair Carpet|Adiantum capillus-veneris|Mabel|1999||?|a churchyard wall|lance|
Bent Ruler|Asplenium scolopendrium|Hilda|1974||d|a Marrowmere hedge bank||
Goffered Cuff|Asplenium scolopendrium|Anselm|1976||d|his father's rockery|triangular|
Kitchen Fork|Asplenium nidus|Amina|2021||s|nursery sowing|lance|
Sleeping Policeman|Asplenium scolopendrium|Hamish|2010|from spores of 'Goffered Cuff'|?|own sowing|round|
Watch Chain|Asplenium trichomanes|Cuthbert|1990||s|a station wall||
Bishop's Eyebrow|Athyrium filix-femina|Anselm|1975||d|a wood above Marrowmere|triangular|
Mackerel Sky|Athyrium niponicum|Keiko|2009||s|own sowing||
Moth Lamp|Athyrium niponicum|Keiko|2013|from spores of 'Mackerel Sky'|s|own sowing|lance|
Old Lace Factory|Athyrium filix-femina|Gwenllian|1996|from spores of 'Bishop's Eyebrow'|d|own sowing|thrice divided|
Pewter Spoon Drawer|Athyrium niponicum|Sigrid|2022|'Mackerel Sky' x filix-femina|?|mixed sowing|thrice divided|
Barn Owl Pellet|Polypodium vulgare|Idris|2008||d|a barn roof||
Feathered Oar|Polypodium cambricum|Gwenllian|1998||d|a sea cliff, one plant|twice divided|
Lamplit Ladder|Polypodium cambricum|Fergal|2005|from spores of 'Feathered Oar'|?|own sowing||
Spilt Milk Jug|Polypodium vulgare|Hamish|2012||d|a dry stone wall|triangular|
Torn Programme|Polypodium cambricum|Idris|2017|'Feathered Oar' x vulgare|d|mixed sowing|twice divided|
Blue Overall|Phlebodium aureum|Greenlatch Nursery|1987||s|nursery sowing||
Crumpled Timetable|Phlebodium aureum|Xiomara|2022|sport of 'Blue Overall'|d|one branch of the rhizome|triangular|
Seaside Landlady|Phlebodium aureum|Celeste|2012|from spores of 'Blue Overall'|s|own sowing|lance|
Coppersmith's Yard|Dryopteris affinis|Oswin|1982||d|a ditch by the forge||
Crested Weathercock|Dryopteris filix-mas|Anselm|1973||s|old garden||
Kingfisher Pie|Dryopteris affinis|Ngaire|2013|from spores of 'Coppersmith's Yard'|s|own sowing|triangular|
Muddy Spaniel|Dryopteris filix-mas|Rosalind|2007|'Crested Weathercock' x affinis|?|mixed sowing|twice divided|
Stovepipe|Dryopteris filix-mas|Percival|1992||d|a railway bank|strap|
Bear's Pyjamas|Davallia fejeensis|Leilani|2013||d|a friend's veranda|twice divided|
Cellar Spider|Davallia griffithiana|Dmitri|2014||d|a broken pot|lance|
Rabbit Telegraph|Davallia fejeensis|Greenlatch Nursery|1991||?|nursery sowing||
White Rope Walk|Davallia griffithiana|Dmitri|2018|sport of 'Cellar Spider'|d|one rhizome|twice divided|
"""

# The two names of every pair of the answer key, in its order.
LOOKALIKE_NAMES = """
Kettle Steam|veitchii|Ada|1998|veitchii x hillii|d|deliberate cross|ball, medium|
Kettel Steam|veitchii||||d||ball, medium|came with this label
Copper Lamplight|willinckii|Jonquil|2003|willinckii x ellisii|d|deliberate cross|two|
Copperlamplight|willinckii|Jonquil|2003?|willinckii x ellisii|?||two|from the Greenlatch list
Hilda's Washday|bifurcatum|Hilda|1984|bifurcatum x veitchii|d|a mixed tray|broad|
Hilda Washday|bifurcatum|Hilda|1980s||?||broad|
Mount Marrowmere|hillii|Bram|2011|hillii x willinckii|d|deliberate cross|basket, hanging|
Mt. Marrowmere|hillii|Bram||hillii x willinckii|d||basket, hanging|
Night Ferry No. 2|stemaria|Idris|2009|stemaria x alcicorne|d|second of five sisters|ball|
Night Ferry II|stemaria|Idris|about 2009|stemaria x alcicorne|?||ball|
Crème Brocade|elephantotis|Marguerite|2010|from spores of elephantotis|s|own sowing|ball|
Creme Brocade|elephantotis|Marguerite|2010||?||ball|
Tidewrack|alcicorne|Sunniva|2014|alcicorne x madagascariense|d|deliberate cross|arching|
Tidewrack Form|alcicorne|||alcicorne x madagascariense|?||arching|so on the nursery's tag
Old Tin Roof|hillii|Hamish|2008|hillii x 'Cold Tea'|d|deliberate cross|unforked|
Grandmother's Apron|hillii|||'Cold Tea' x hillii|?||unforked|a raffle prize without a label, named by its keeper
Chapel Bell|coronarium|Rafael|2011|coronarium x ridleyi|d|deliberate cross|ball|
Thursday's Find|coronarium|Rafael|2011|P. ridleyi x P. coronarium|?||ball|
Quarry Mist|Phlebodium aureum|Idris|2010|from spores of 'Blue Overall'|d|own sowing|triangular|
Quarry Mist|Polypodium aureum|Idris|2010||?||triangular|still under the old genus
Golden Teakettle|Nephrolepis exaltata|Xiomara|2022|sport of 'Pigeon Post'|d|her stair well|round, twice divided|
Tetera Dorada|Nephrolepis exaltata|Xiomara|2022|sport of 'Pigeon Post'|?||round, twice divided|
Ramosum Harthollow|Asplenium scolopendrium|the late Mr Dabbs|1957||d|Harthollow lane|round|
Harthollow Ramosum|Asplenium scolopendrium||||?||round|from an old list
Plumula Velata|Athyrium filix-femina|Miss E. Tolliver-Gray|1958||d|old garden|thrice divided|
Plumulum Velatum|Athyrium filix-femina||||?||thrice divided|
Fogbank|Polypodium cambricum/Plumosum|Gwenllian|2001|from spores of 'Feathered Oar'|d|own sowing|thrice divided|
Plumosum Fogbank|Polypodium cambricum|Gwenllian||from spores of 'Feathered Oar'|d||thrice divided|
Whispering Gallery|Adiantum raddianum|Marguerite|2009|from spores of 'Bride's Sixpence'|?|own sowing|round|
Wispering Galery|Adiantum raddianum|Marguerite|||?||round|
Phantom Quay|Davallia fejeensis|Leilani|2016||d|from the sale table|lance|
Fantom Key|Davallia fejeensis|Leilani|||?||lance|written down by ear
Thornwick|Dryopteris affinis|Ada|1994|from spores of 'Coppersmith's Yard'|s|own sowing|twice divided|
Thornwickii|Dryopteris affinis|Ada||from spores of 'Coppersmith's Yard'|?||twice divided|
Paper Lantern|Nephrolepis cordifolia|Lotte|2017||d|her window sill|round|
Paper Lanterns|Nephrolepis cordifolia|Lotte|2017||?||round|
Saint Oswin|Asplenium scolopendrium|Oswin|1988||d|chapel wall|triangular|
St. Oswin|Asplenium scolopendrium|Oswin|||?||triangular|
Green Bonnet|Adiantum raddianum|Wilhelmina|2004|sport of 'Bride's Sixpence'|d|one crown|twice divided, lance|
Veranda Queen|Adiantum raddianum|Wilhelmina|2004|sport of 'Bride's Sixpence'|?||twice divided, lance|
Harbour Lantern|veitchii|Bram|2013|veitchii x alcicorne|d|deliberate cross|ball|
Harbour Lanthorn|willinckii|Fergal|2006|willinckii x stemaria|d|deliberate cross|basket|
Silver Ratchet|veitchii|Sunniva|2009|'Clerestory' x ridleyi|d|deliberate cross|basket|
Golden Ratchet|hillii|Sunniva|2015|hillii x ellisii|d|deliberate cross|ball|
Tarn Number 3|andinum|Rosalind|2014|andinum x willinckii|d|third of a sowing|ring, hanging|
Tarn Number 8|andinum|Rosalind|2014|andinum x willinckii|d|eighth of a sowing|basket, erect|
Ada Thornwick|willinckii|Rafael|2015|willinckii x veitchii|d|deliberate cross|basket|
Hollis Thornwick|ellisii|Rafael|2017|ellisii x alcicorne|d|deliberate cross|ball|
Bellwether|hillii|Hamish|2010|'Ironmonger' x willinckii|d|deliberate cross|basket, hanging|
Bellweather|alcicorne|Yusuf|2018|from spores of alcicorne|s|own sowing|ball, erect|
Cristata Millrace|Nephrolepis exaltata|Cobbledick & Daughters|1957|sport of exaltata|d|nursery sport|once divided|
Cristata Angustata Millrace|Nephrolepis cordifolia|Ferrantine|1958|sport of cordifolia|d|nursery sport|thrice divided|
Crispum Oxlode|Asplenium scolopendrium|the late Mr Dabbs|1956||d|Oxlode fen|lance|
Crispum Oxlade|Asplenium scolopendrium|Miss E. Tolliver-Gray|1951||d|Oxlade farm|round|
Narrow Gauge|Athyrium filix-femina|Percival|1997||d|a railway bank|lance|
Broad Gauge|Athyrium filix-femina|Percival|1998||d|a railway bank|triangular|
Pewter Thimble|Adiantum raddianum|Priya|2018|from spores of 'Bride's Sixpence'|?|own sowing|round|
Pewter Thistle|Adiantum capillus-veneris|Percival|2001|from spores of 'Lost Earring'|?|own sowing|lance|
Lady Quagmyre|Dryopteris filix-mas|Ottoline|1996||d|her drive|lance|
Lord Quagmyre|Dryopteris affinis|Ottoline|2003||d|her drive|triangular|
"""
