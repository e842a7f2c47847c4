"""Taking in what came in: every visit wholly or not at all, nothing written over, and what is unclear asked.

A visit's file is the last to be written. What is about to be done stands in `received/seen.yaml` before, so that a run
that was killed goes on with the same horse and the same file.
"""

from __future__ import annotations

import datetime as dt
import hashlib
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field, replace
from pathlib import Path

from recordgen.files import clear_parts, write_new, write_whole, writing
from recordgen.problems import Problem, Problems, Trouble
from recordgen.progress import steps
from recordgen.records.models.horse import Horse
from recordgen.records.photos.add import keep_photo
from recordgen.records.photos.files import PHOTOS
from recordgen.records.receive.decide import Compose, Deciding, Decision, Kind
from recordgen.records.receive.doubts import SettledVisit, settle
from recordgen.records.receive.incoming import Incoming, IncomingVisit
from recordgen.records.receive.pictures import Picture, new_pictures, pictures_of, with_late_pictures, with_pictures
from recordgen.records.receive.questions import Answers, Phrase, Question
from recordgen.records.receive.seen import SeenVisit, SeenVisits
from recordgen.records.receive.visits import visit_text
from recordgen.records.receive.whose import (
    Horses,
    VisitOwner,
    describe_visit,
    find_day,
    find_horse,
    one_line,
    question_of_horse,
)
from recordgen.records.write.visit import VISIT_SCHEMA
from recordgen.records.yaml.write import as_yaml
from recordgen.sentences import say, spoken_day

RECEIPT_SIGNS = "abcdefghijkmnpqrstuvwxyz23456789"
YES, NO = "yes", "no"
# The lines of a file that was only begun which somebody wrote into it by hand; folder: of the horse, day: of the visit.
HandWritten = Callable[[Path, dt.date], Sequence[str]]


@dataclass(frozen=True)
class Outcome:
    """Tells what became of a visit.

    file: as stable/horse/name. photos: files that were added. open: still asked. text: of the file that is written.
    """

    visit: IncomingVisit
    told: str
    kind: Kind
    file: str = ""
    photos: tuple[str, ...] = ()
    open: tuple[Question, ...] = ()
    text: str = ""

    @property
    def is_in(self) -> bool:
        """Tell whether the phone may forget it."""
        return self.kind != "waiting"


@dataclass
class Intake:
    """One run of taking in.

    records: the practice's folder. own: the practice's name. dry_run: nothing is written. problems: what is told of
    visits and photographs that could not be taken in.
    """

    records: Path
    today: dt.date
    own: str
    answers: Answers
    phrase: Phrase
    seen: SeenVisits
    horses: Horses
    near_and_off: bool = False
    dry_run: bool = False
    hand_written: HandWritten = lambda folder, day: ()
    problems: Problems = field(default_factory=Problems)

    def take(self, incoming: Incoming) -> list[Outcome]:
        """Take in every visit of what came in; one that cannot be taken in stops no other."""
        if question := self._of_another_practice(incoming):
            return [
                Outcome(visit, describe_visit(visit, self.horses), "waiting", open=(question,))
                for visit in incoming.visits
            ]
        outcomes = []
        for visit in steps(say("Taking in visits"), incoming.visits):
            told = describe_visit(visit, self.horses)
            try:
                outcomes.append(self._visit(visit, incoming))
            except Trouble as trouble:
                message = say("{visit}: {message}", visit=told, message=trouble.message)
                self.problems.add(Problem(visit.place, "visit-not-received", message, trouble.way_out))
                outcomes.append(Outcome(visit, told, "waiting"))
        return outcomes

    def _of_another_practice(self, incoming: Incoming) -> Question | None:
        """The question whether notes that another practice's page made are ours, where it is open. Raises Trouble."""
        if not incoming.practice or incoming.practice == self.own or not incoming.visits:
            return None
        choices = {YES: self.phrase("practice_yes"), NO: self.phrase("practice_no")}
        asks = self.phrase("asks_practice", other=incoming.practice, own=self.own)
        question = Question(f"{incoming.id} practice", incoming.practice, asks, choices)
        answer = self.answers.of(question)
        if answer == NO:
            raise Trouble(
                say("these notes are those of {practice}", practice=incoming.practice),
                say("Nothing of them was taken in"),
            )
        return question if answer is None else None

    def _visit(self, visit: IncomingVisit, incoming: Incoming) -> Outcome:
        known = self.seen.visits.get(visit.id)
        told = describe_visit(visit, self.horses, known.horse if known else None)
        if known and not known.begun and (known.rev > visit.rev or (known.rev == visit.rev and not known.waiting)):
            return self._take_known(visit, known, told)
        self.answers.begin(known.answers if known else {})
        found = self._whose(visit, incoming.id, known)
        day = find_day(visit, incoming.listed, self.today, self.horses, self.answers, self.phrase)
        asked = tuple(one for one in (found, day) if isinstance(one, Question))
        if isinstance(found, Question) or isinstance(day, Question):
            return Outcome(visit, told, "waiting", open=asked)
        if found.which is None or day is None:
            self._keep(visit, SeenVisit(rev=visit.rev, horse=visit.horse, answers=self.answers.used))
            return Outcome(visit, told, "left_out")
        return self._of_horse(visit, incoming, found, found.which, day, known)

    def _whose(self, visit: IncomingVisit, file: str, known: SeenVisit | None) -> VisitOwner | Question:
        made = self.seen.horses.get(question_of_horse(visit, file))
        which = known.horse if known and (known.file or known.begun) else made
        if which is None or (which not in self.horses.horses and which != made):
            return find_horse(visit, file, self.horses, self.answers, self.phrase)
        return VisitOwner(which, "" if which in self.horses.horses else one_line(visit.name) or which.partition("/")[2])

    def _take_known(self, visit: IncomingVisit, known: SeenVisit, told: str) -> Outcome:
        """A visit that is here, perhaps with photographs that are not."""
        which = known.horse if known.horse in self.horses.horses else None
        if which is None or (known.file is None and not known.photos):
            return Outcome(visit, told, "have")
        with self._undo_if_refused(visit, self.records / which) as placed:
            day = dt.date.fromisoformat(known.file[:10]) if known.file else visit.day
            pictures = new_pictures(visit, self.records / which, day, known.photos, self.problems)
            photos = self._photos(which, pictures.values(), placed)
            if photos:
                late = [pictures[id_] for id_ in photos]
                known = self._name_late(self.records / which / known.file, known, late) if known.file else known
                self._keep(visit, known.model_copy(update={"photos": known.photos | photos}))
        return Outcome(visit, told, "have", f"{which}/{known.file or ''}", tuple(path.name for path in placed))

    def _of_horse(
        self,
        visit: IncomingVisit,
        incoming: Incoming,
        found: VisitOwner,
        which: str,
        day: dt.date,
        known: SeenVisit | None,
    ) -> Outcome:
        name = found.new_name or self.horses.horses[which].name
        told = say(
            "{horse} at {stable}, {day}",
            horse=name,
            stable=self.horses.stables.get(which.partition("/")[0], which),
            day=spoken_day(day),
        )
        folder, before = self.records / which, known.photos if known else {}
        pictures = pictures_of(visit, folder, day, before, self.problems)
        record = with_pictures(visit, pictures, self.problems)
        settled = settle(replace(visit, record=record), day.isoformat(), told, self.answers, self.phrase)
        compose = self._composer(settled, visit, folder, name, day)
        deciding = Deciding(visit.key, visit.rev, told, folder, day, settled, known, compose, self.answers, self.phrase)
        decision = deciding.decide()
        asked = (*settled.questions, *((decision.open,) if decision.open else ()))
        asked = () if decision.kind == "changed_here" else asked
        if decision.kind == "waiting":
            return Outcome(visit, told, "waiting", f"{which}/{decision.file}", open=asked)
        if found.new_name:
            self.seen.horses[question_of_horse(visit, incoming.id)] = which
        entry = SeenVisit(
            rev=visit.rev,
            horse=which,
            file=decision.file,
            sum=_sum_after(decision, known),
            photos=before,
            waiting=tuple(one.id for one in asked),
            answers=self.answers.used,
        )
        photos = self._write(visit, found, which, pictures, decision, entry)
        return Outcome(visit, told, decision.kind, f"{which}/{decision.file or ''}", photos, asked, decision.text)

    def _composer(self, settled: SettledVisit, visit: IncomingVisit, folder: Path, name: str, day: dt.date) -> Compose:
        schema = ["yaml-language-server: $schema=../../" + VISIT_SCHEMA.as_posix()]
        head = schema if (self.records / VISIT_SCHEMA).is_file() else []
        key, source = ("comment_sheet", one_line(visit.source)) if visit.source else ("comment", "")
        head = [*head, self.phrase(key, horse=" ".join(name.split()), day=spoken_day(day), source=source)]
        by_hand = self.hand_written(folder, day)
        return lambda comments: visit_text(settled.record, [*head, *comments, *by_hand], self.near_and_off)

    def _write(
        self,
        visit: IncomingVisit,
        found: VisitOwner,
        which: str,
        pictures: Mapping[str, Picture],
        decision: Decision,
        entry: SeenVisit,
    ) -> tuple[str, ...]:
        """Write a visit's photographs and then its file; where anything is refused, nothing stays. Raises Trouble."""
        folder = self.records / which
        known = self.seen.visits.get(visit.id)
        if known and known.begun and decision.file and not decision.text and not self.dry_run:
            # A run that was killed just after it gave the file its name left the part that it wrote.
            with writing(folder / decision.file, say("The visit was not taken in")):
                clear_parts(folder / decision.file)
        with self._undo_if_refused(visit, folder) as placed:
            self._keep(visit, _begun(entry, known))
            if found.new_name:
                self._make_horse(folder, found.new_name, placed)
            photos = self._photos(which, pictures.values(), placed)
            if decision.text and decision.file and not self.dry_run:
                _write_visit(folder / decision.file, decision)
            self._keep(visit, entry.model_copy(update={"photos": entry.photos | photos}))
        if found.new_name:
            self.horses.horses[which] = Horse(name=found.new_name)
        if decision.then_gone and not self.dry_run:
            (folder / decision.then_gone).unlink(missing_ok=True)
        return tuple(path.name for path in placed if path.parent.name == PHOTOS)

    @contextmanager
    def _undo_if_refused(self, visit: IncomingVisit, folder: Path) -> Iterator[list[Path]]:
        """A list of new files, which are taken away again where the block ends in trouble."""
        placed: list[Path] = []
        before = self.seen.visits.get(visit.id)
        try:
            yield placed
        except (Trouble, OSError):
            for path in reversed(placed):
                path.unlink(missing_ok=True)
            for empty in (folder / PHOTOS, folder):
                with suppress(OSError):
                    empty.rmdir()
            with suppress(Trouble, OSError):
                self._keep(visit, before)
            raise

    def _keep(self, visit: IncomingVisit, entry: SeenVisit | None) -> None:
        if not self.dry_run:
            self.seen.keep(visit.id, entry)

    def _make_horse(self, folder: Path, name: str, placed: list[Path]) -> None:
        if self.dry_run:
            return
        file = folder / "horse.yaml"
        with writing(file):
            folder.mkdir(exist_ok=True)
            if write_new(file, as_yaml({"name": name})):
                placed.append(file)

    def _photos(self, which: str, pictures: Iterable[Picture], placed: list[Path]) -> dict[str, str]:
        """Keep the photographs that are not here: each one's file by its id. Raises Trouble."""
        kept = {}
        for picture in pictures:
            if picture.subject is None or self.dry_run:
                continue
            path, new = keep_photo(self.records, self.records / which, picture.subject, picture.made)
            placed.extend([path] if new else [])
            if path.name != picture.name:
                raise Trouble(say("another photograph was added meanwhile"), say("Take the notes in once more"))
            kept[picture.id] = path.name
        return kept

    def _name_late(self, file: Path, known: SeenVisit, late: Iterable[Picture]) -> SeenVisit:
        """Let the tracings in a visit's file name the photographs that came after it. Raises Trouble."""
        if self.dry_run or not file.is_file():
            return known
        before = file.read_bytes()
        after = with_late_pictures(before, file.name, late)
        if after == before:
            return known
        with writing(file, say("The visit stays as it was")):
            write_whole(file, after)
        is_ours = hashlib.sha256(before).hexdigest() == known.sum
        return known.model_copy(update={"sum": hashlib.sha256(after).hexdigest()}) if is_ours else known


def _write_visit(path: Path, decision: Decision) -> None:
    """Write a visit's file: new, or over the very text that may be written over. Raises Trouble."""
    with writing(path, say("The visit was not taken in")):
        if decision.over is None:
            done = write_new(path, decision.text)
        elif done := hashlib.sha256(path.read_bytes()).hexdigest() == decision.over:
            write_whole(path, decision.text)
    if not done and path.read_text("utf-8", "replace") != decision.text:
        raise Trouble(say("{name} was changed meanwhile", name=path.name), say("Take the notes in once more"))


def _sum_after(decision: Decision, known: SeenVisit | None) -> str | None:
    """The SHA-256 of what was written here last into a visit's file; none where nothing was."""
    if decision.text:
        return hashlib.sha256(decision.text.encode()).hexdigest()
    return known.sum if known and known.file == decision.file else None


def _begun(entry: SeenVisit, known: SeenVisit | None) -> SeenVisit:
    """Tell how a visit is remembered while it is written: with the file that is still there, if there is one."""
    if known is None or known.file is None:
        return entry.model_copy(update={"begun": True})
    return known.model_copy(update={"answers": entry.answers, "begun": True})


def receipt_word(file: str, visits: Sequence[IncomingVisit]) -> str:
    """The word of four signs that tells the phone that a file and all its visits are taken in."""
    told = " ".join(sorted(visit.key for visit in visits))
    digest = hashlib.sha256(f"receipt {file} {told}".encode()).digest()
    return "".join(RECEIPT_SIGNS[byte % 32] for byte in digest[:4])
