"""Builds in progress: the user's folder, the journal, re-planning, as-built and rescue.

Everything takes the user's folder first. Names below are imported from the
module named, not from here, so that a page pays only for what it uses.

``bench.folder``: where the user's things lie
    ``home_folder() -> Path``                       $TOMMYBAR_HOME or ~/.local/share/tommybar
    ``open_folder(path=None) -> Folder``            makes and migrates what is not there
    ``Folder``: ``.path``, ``.designs() -> tuple[str, ...]``, ``.shops()``,
    ``.design_path(name) -> Path``, ``.shop_path(name)``, ``.save_design(name, text) -> Path``,
    ``.save_shop(name, text) -> Path`` (one move, synced to disk; names are checked)
``bench.builds``: making of a design in a shop
    ``start_build(folder, design_name, shop_name, *, title="", scale=None, pins=None,
    stock="ask", made=None: Path|None) -> Build``
    ``builds(folder) -> tuple[BuildLine, ...]``     id, title, design, shop, begun, entries, last
    ``load_build(folder, build_id) -> Build``
    ``Build``: ``.id .title .design_name .shop_name .scale .pins .stock .begun .entries``
``bench.entries``: what may stand in a journal
    ``Entry(id, device, number, kind, key, at, by, said)``; ``new_entry(kind, key, *, device, number,
    by="", at="", id="", **said) -> Entry``; ``entry_from(data) -> Entry`` (checks data from outside);
    ``entry.as_dict()``. Kinds and what each says:
    ``tick`` (key step or card) | ``skip`` (reason) | ``size`` (key part.size; value [mm], instrument,
    uncertainty [mm], copy, instead_of: ids of readings it replaces knowingly) |
    ``pause`` (key part; where: "in the chuck"/"out", mark: which jaw faces the mark, zeros, hot, tool) |
    ``resume`` (key part; as_left, zeros_valid, face_a) | ``undo`` (key: id of an entry) |
    ``note`` (words) | ``initials`` (key step or card; role: learner/checker, who) |
    ``printed`` (plan_id, cards) | ``change`` (because, design, shop, pins, scale, stock, forget)
``bench.journal``: entries sent and stored
    ``receive(folder, build_id, entries) -> Receipt(stored, known, refused)``; what it names as stored
    or known is on the disk. ``entries_after(folder, build_id, position) -> (entries, position)``
    for a second device that wants what is new.
``bench.standing``: what the entries come to
    ``standing(entries) -> Standing``: ``.ticks .sizes .pauses .notes .initials .printed .undone .conflicts``
    ``conflicts_of(entries) -> tuple[Conflict(kind, key, entries, words), ...]``
    ``settled(conflict, keep, *, device, number, by) -> tuple[Entry, ...]``  the undo entries that settle it
``bench.made_file``: a build as a made file and back
    ``made_of(build) -> Made``; ``made_text(build) -> str``; ``entries_from_made(path, title="", build_id="")``
``bench.replan``: the plan of a build, and what an entry changes in it
    ``plan_of(build, tell=...) -> Plan``            cards that are begun keep their order
    ``replanned(before: Build, after: Build, tell=...) -> Changes``: ``.plan .cards`` (ChangedCard: key, part,
    number, begun, lines) ``.limits`` (NewLimits: size, before, after, why) ``.stale`` (StaleCard: key,
    printed_on, plan_id) ``.kept`` (words)
    ``record(folder, build_id, entries, tell=...) -> Recorded(receipt, build, changes)``
    ``printed_entry(plan, *, device, number, by) -> Entry``   to be recorded when a pack is printed
``bench.as_built``: as-built against as-drawn
    ``differences(build, plan=None) -> tuple[Difference, ...]``: size, drawn, low, high, built, instrument,
    by, on, verdict, words, can_accept, why_not, place, also, ``.apart``
    ``accept(build, taken: Iterable[Difference]) -> Accepted(text, revision, words)`` the next revision of
    the design file, to be saved by ``folder.save_design``
``bench.splice``: a figure changed in a file's text, comments kept
    ``value_at(text, place) -> str``; ``with_value(text, place, value) -> str``; ``with_key(text, place, key,
    value)``; ``with_lines(text, place, entry)``; ``without_item(text, place)``
``bench.places``: ``place_of(text, size) -> Standing(place, text, named) | None`` where a size stands in a design
``bench.rescue``: what goes wrong
    ``REALITIES`` (tuple of Reality: number, title, asks); ``situation(build) -> Situation``;
    ``warnings(situation) -> tuple[Finding, ...]``, whose number less 750 is that of the reality;
    ``offers(situation, Mishap(number, about, value, said, more)) -> tuple[Offer, ...]`` cheapest first;
    ``Offer``: words, minutes, metal, lost, stops, changes, change, readings, ``.plan``;
    ``taking(offer, *, device, number, by) -> tuple[Entry, ...]`` the entries that take it
``bench.tool_log``: what tools really do
    ``observed(build, plan=None) -> tuple[Observation, ...]``; ``proposals(observations, shop_text) ->
    tuple[Proposal, ...]``; ``apply_proposal(shop_text, proposal) -> str``. A run-out after gripping is a
    reading named ``part/card.runout``.
``bench.backup``: ``back_up(folder, keep=14) -> Path``; ``backups(folder) -> tuple[Path, ...]``
``bench.archive``: ``write_archive(folder, place) -> Path``; ``read_archive(folder, place) ->
    Brought(designs, shops, builds, entries, known, renamed)``
"""
