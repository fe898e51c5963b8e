from frondkeep.society.models.meetings import Meeting
from frondkeep.society.models.people import Appearance, Household, Keeper, Member
from frondkeep.society.models.society import Society
from frondkeep.society.models.submissions import Submission
from frondkeep.society.models.users import Role, RoleHeld, User

__all__ = [
    "Appearance",
    "Household",
    "Keeper",
    "Meeting",
    "Member",
    "Role",
    "RoleHeld",
    "Society",
    "Submission",
    "User",
]
