"""The members of the Marrowmere Fern Society; all of them invented."""

from dataclasses import dataclass

from demo_data.spreadsheets import Row

SOCIETY = "Marrowmere Fern Society"


@dataclass(frozen=True)
class Person:
    """A member: ``joined`` is the year, ``joined_words`` what the membership book says."""

    name: str
    email: str
    household: str
    phone: str
    joined: int
    joined_words: str
    role: str
    shown: str

    @property
    def first(self) -> str:
        """The first name; no two members share one."""
        return self.name.split()[0]


# name | e-mail before @example.org | household | joined, as written | role | wishes to appear
_BOOK = """
Ada Thornwick|ada.thornwick|Thornwick|1987|curator|by name
Hollis Thornwick|ada.thornwick|Thornwick|1987||by name
Bram Okonedo-Vale|bram|Okonedo-Vale|spring 2006|show committee|by name
Celeste Okonedo-Vale|celeste|Okonedo-Vale|2006||a member
Wendeline Sparrowgate|w.sparrowgate|Sparrowgate & Lune|March 2011||a member
Theo Lune|theo.lune|Sparrowgate & Lune|2011||curator only
Ifeoma Adebrook|ifeoma.adebrook||2014|show committee|by name
Mei-Lin Tarrowby|meilin||September 2015|membership secretary|a member
Rafael Quintamar|rafael.q||2009|spore keeper|by name
Saoirse Fennimarsh|saoirse||2018|administrator|a member
Yusuf Karadene|yusuf.karadene||autumn 2016||by name
Priya Vellanoor|priya.v||2017||a member
Tomasz Zielonkowy|tomasz||May 2012||by name
Hilda Crumplehorn|||before 1980||by name
Oswin Peverell-Dray|||c. 1983||a member
Marguerite Aubépin|marguerite||2003||by name
Kofi Mensahdale|kofi||2019||a member
Ngaire Tautuku-Reed|ngaire||12/3/2010||by name
Anselm Grubbwater|||1979?||curator only
Lotte Vinterhave|lotte||2013||a member
Idris Cwmfelin-Parr|idris||2005||by name
Beatriz Alcanforado|beatriz||June 2016||a member
Sunniva Haugstrand|sunniva||2008||a member
Dmitri Paportnik|dmitri||2011||by name
Keiko Shidamori|keiko||2007||by name
Percival Oddsocke|||1991||a member
Amina Barzakhi|amina||2020||a member
Jonquil Weatherstaff|jonquil||1998~||by name
Cuthbert Mossop-Lyle|||late 1980s||curator only
Leilani Kahiwai-Stone|leilani||2012||a member
Rosalind Emberthwaite|rosalind||October 2001||by name
Hamish Drumlochy|hamish||2004||a member
Xiomara Helechal|xiomara||2021||a member
Gwenllian Rhedynog|gwenllian||1995||by name
Barnaby Tuckfield-Ashe|barnaby||2022||a member
Ottoline Quagmyre|||1989||a member
Nikhil Sarovaram|nikhil||2018||a member
Esperanza Monteverdejo|esperanza||2015||by name
Fergal O'Raithnigh|fergal||2002||a member
Wilhelmina Steenvaren|||1999||a member
Tendai Mushangwe|tendai||Jan 2023||curator only
Mabel Hartstongue-Pike|||1985||by name
Ludo Bracewell-Finch|ludo||2024||a member
Sigrid Ormbunke|sigrid||summer 2019||a member
Zephyrine Maudlake|zephyrine||2025||a member
"""

_VAGUE_YEARS = {"before 1980": 1978, "c. 1983": 1983, "late 1980s": 1988, "1979?": 1979, "1998~": 1998}


def _joined_year(words: str) -> int:
    return _VAGUE_YEARS.get(words) or int(words[-4:])


def _read_book() -> tuple[Person, ...]:
    people = []
    for place, line in enumerate(_BOOK.strip().splitlines()):
        name, mailbox, household, joined, role, shown = line.split("|")
        email = f"{mailbox}@example.org" if mailbox else ""
        # 01632 is set aside for invented numbers by the British regulator.
        phone = f"01632 {960100 + 7 * place}" if place % 5 != 3 else ""
        people.append(Person(name, email, household, phone, _joined_year(joined), joined, role, shown))
    return tuple(people)


PEOPLE = _read_book()
HOUSEHOLDS = tuple(dict.fromkeys(p.household for p in PEOPLE if p.household))
BY_FIRST = {person.first: person for person in PEOPLE}


def household_as_keeper(household: str) -> str:
    """How the curator's list writes partners who keep their plants together."""
    return f"{household} household"


def member_rows() -> list[Row]:
    """The members' sheet: a title, a line of group headings, the headings, one row a member."""
    title = f"{SOCIETY} – members' book, copied out January 2026"
    groups = ["Member", "", "", "How to reach them", "", "In the society", "", "", ""]
    headings = [
        "Old No.", "Full name", "Household", "E-mail", "Tel.", "Joined", "Office held", "Wishes to appear", "Notes",
    ]  # fmt: skip
    rows: list[Row] = [[title] + [""] * 8, groups, headings]
    for place, person in enumerate(PEOPLE, start=1):
        note = "no computer, log plants for them" if not person.email else ""
        rows.append(
            [
                f"M{place:03d}",
                person.name,
                person.household,
                person.email,
                person.phone,
                person.joined_words,
                person.role,
                person.shown,
                note,
            ]
        )
    return rows


MERGED_HEADINGS = ("A1:I1", "A2:C2", "D2:E2", "F2:I2")
