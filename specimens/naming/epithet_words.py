"""Words that matter in a cultivar epithet."""

import re


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


SMALL_WORDS = _words(
    """and but nor or yet as than about above across after against along amid among around at before behind
    below beneath beside between beyond by down during for from in inside into near of off on onto over
    past through to toward towards under until up upon with within without"""
)
"""Conjunctions and prepositions: small inside an epithet ('Cloth of Gold')."""

LEFT_AS_WRITTEN = _words("a an the de del della den der des di du el la las le les los van von y et und")
"""Articles and particles: custom differs, so they stay as they were written."""

BANNED_SINCE_1959 = _words("form forms variety varieties")
BANNED_SINCE_1996 = _words(
    """cultivar cultivars grex grexes group groups hybrid hybrids improved maintenance maintenances mixture
    mixtures selection selections series sport sports strain strains transformed"""
)

EXAGGERATIONS = _words(
    """best biggest brightest earliest fastest finest greatest hardiest heaviest largest latest longest
    loveliest most newest rarest richest shortest smallest strongest tallest unequalled unrivalled
    unsurpassed widest"""
)

COMMON_NAMES = {
    "": ("fern", "ferns"),
    "adiantum": ("maidenhair", "maidenhairs"),
    "asplenium": ("spleenwort", "spleenworts"),
    "platycerium": ("staghorn", "staghorns", "elkhorn", "elkhorns"),
    "polypodium": ("polypody", "polypodies"),
    "pteris": ("brake", "brakes"),
}
"""Common names by genus; those under '' are common names of every fern."""

LATIN_WORDS = _words(
    """alba album albus argentea argenteum aurea aureum aureus bifida bifidum capitata capitatum compacta
    compactum congesta congestum contorta contortum corymbifera corymbiferum crispa crispum crispus
    cristata cristatum cristatus cruciata cruciatum cum decora decorum decumbens elegans erecta erectum
    et fimbriata fimbriatum foliosa foliosum forma gigantea giganteum gracile gracilis gracillima
    gracillimum grandiceps grande grandis incisa incisum lacera laceratum latifolia latifolium linearis
    lineare longum lutea luteum magna magnum major majus marginata marginatum maxima maximum minima
    minimum minor minus minutum mirabile mirabilis monstrosa monstrosum multifida multifidum nana nanum
    nova novum nobile nobilis pendula pendulum plumosa plumosum polydactyla polydactylum pulchra
    pulchrum pulcherrima pulcherrimum purpurea purpureum ramosa ramosum rotundata rotundatum rubra
    rubrum sagittata sagittatum setosa setosum speciosa speciosum spectabile spectabilis superba
    superbum tripinnata tripinnatum undulata undulatum variegata variegatum viride viridis vulgare
    vulgaris"""
)

LATIN_ENDING = re.compile(
    r".{3,}(?:at(?:um|us)|issim(?:a|um|us)|os(?:um|us)|ensis|oides|iflor(?:a|um|us)|ifoli(?:a|um|us)"
    r"|ian(?:um|us)|id(?:um|us)|ul(?:um|us)|lob(?:um|us)|pinn(?:a|um|us)|fid(?:a|um|us)|form(?:e|is)|descens|scens|iceps)"
)
"""Endings that hardly any word but a Latin one has; those shared with other tongues (-ata, -osa) are left out."""
