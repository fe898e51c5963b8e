"""Lineage can be thrown away and computed again; a check says what is not right."""

from io import StringIO

import pytest
from django.core.management import CommandError, call_command

from lineage.models import LineageNode, ParentageClass
from specimens.models import Name
from tests.lineage.kin import made_of, make_name, make_plant, make_pup, node

pytestmark = pytest.mark.django_db


def rebuild(**options) -> str:
    out = StringIO()
    call_command("rebuild_lineage", stdout=out, stderr=out, **options)
    return out.getvalue()


def test_thrown_away_it_is_computed_again():
    pup = make_pup(make_plant(name=make_name("andinum")))
    LineageNode.objects.all().delete()
    ParentageClass.objects.all().delete()
    assert "2 plants and 1 parentages to write" in rebuild()
    assert made_of(pup) == {"andinum": (1, 1)}
    assert node(pup).clonal_steps == 1


def test_a_check_of_what_is_right_is_content():
    make_pup(make_plant(name=make_name("andinum")))
    assert "Everything stored is what the records say." in rebuild(check=True)


def test_a_check_says_which_plant_and_which_name_differ_and_writes_nothing():
    andinum, ridleyi = make_name("andinum"), make_name("ridleyi")
    plant = make_plant(name=andinum)
    LineageNode.objects.filter(specimen=plant).update(clonal_steps=7)
    Name.objects.filter(pk=andinum.pk).update(accepted=ridleyi)
    out = StringIO()
    with pytest.raises(CommandError, match=r"\d differences"):
        call_command("rebuild_lineage", check=True, stdout=StringIO(), stderr=out)
    assert f"plant {plant.pk}: differs" in out.getvalue()
    assert f"name {andinum.pk}: accepted name differs" in out.getvalue()
    assert node(plant).clonal_steps == 7
