"""Solids as STEP files (ISO 10303-21, AP214): one part, or an assembly whose pieces share their parts.

Names are those of the design, the unit is mm. The header has a fixed date and
no name of a person or machine, so that the same solids give the same bytes.
"""

from __future__ import annotations

import itertools
import re
import tempfile
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from tommybar.refusals import OwnFault
from tommybar.shapes.solids.frames import Frame

STAMP = "2000-01-01T00:00:00"
_USE = re.compile(r"(NEXT_ASSEMBLY_USAGE_OCCURRENCE\(')[^']*'")
_HEADER = re.compile(r"FILE_DESCRIPTION.*?ENDSEC;", re.DOTALL)


def step_of_part(solid: Any, name: str) -> bytes:
    """One solid of the kernel under its part's name."""
    return _written([(name, solid)], None, name)


def step_of_assembly(
    solids: Sequence[tuple[str, Any]], places: Sequence[tuple[str, int, Frame]], title: str
) -> bytes:
    """Pieces (their name, the number of their solid, where they stand) of an assembly."""
    return _written(solids, places, title)


def _written(
    solids: Sequence[tuple[str, Any]], places: Sequence[tuple[str, int, Frame]] | None, title: str
) -> bytes:
    from OCP.IFSelect import IFSelect_RetDone
    from OCP.Interface import Interface_Static
    from OCP.STEPCAFControl import STEPCAFControl_Writer
    from OCP.STEPControl import STEPControl_AsIs
    from OCP.TCollection import TCollection_ExtendedString
    from OCP.TDataStd import TDataStd_Name
    from OCP.TDocStd import TDocStd_Document
    from OCP.XCAFDoc import XCAFDoc_DocumentTool

    _quiet()
    document = TDocStd_Document(TCollection_ExtendedString("XmlXCAF"))
    XCAFDoc_DocumentTool.SetLengthUnit_s(document, 0.001)
    tool = XCAFDoc_DocumentTool.ShapeTool_s(document.Main())
    labels = []
    for name, solid in solids:
        label = tool.AddShape(solid, False)
        TDataStd_Name.Set_s(label, TCollection_ExtendedString(name, True))
        labels.append(label)
    if places is not None:
        from OCP.gp import gp_Trsf
        from OCP.TopLoc import TopLoc_Location

        whole = tool.NewShape()
        TDataStd_Name.Set_s(whole, TCollection_ExtendedString(title, True))
        for name, number, frame in places:
            at = gp_Trsf()
            at.SetValues(*frame)
            piece = tool.AddComponent(whole, labels[number], TopLoc_Location(at))
            TDataStd_Name.Set_s(piece, TCollection_ExtendedString(name, True))
        tool.UpdateAssemblies()
    writer = STEPCAFControl_Writer()
    Interface_Static.SetCVal_s("write.step.unit", "MM")
    Interface_Static.SetCVal_s("write.step.schema", "AP214IS")
    writer.SetNameMode(True)
    if not writer.Transfer(document, STEPControl_AsIs):
        raise OwnFault("The solid kernel could not turn a solid into STEP.")
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "part.step"
        if writer.Write(str(path)) != IFSelect_RetDone:
            raise OwnFault("The solid kernel could not write a STEP file.")
        text = path.read_text(encoding="utf-8")
    text = _HEADER.sub(lambda _: _header(title), text, count=1)
    return _numbered(text).encode()


def _numbered(text: str) -> str:
    """The text with its uses of parts counted from 1: the kernel goes on counting from file to file."""
    counted = itertools.count(1)
    return _USE.sub(lambda found: f"{found[1]}{next(counted)}'", text)


def _header(title: str) -> str:
    name = title.replace("'", "''").encode("ascii", "replace").decode()
    return (
        "FILE_DESCRIPTION(('solids of a design, in mm'),'2;1');\n"
        f"FILE_NAME('{name}','{STAMP}',(''),(''),'','tommybar','');\n"
        "FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));\nENDSEC;"
    )


def read_step(data: bytes) -> Any:
    """The shape that a STEP file holds, in mm."""
    from OCP.STEPControl import STEPControl_Reader

    _quiet()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "part.step"
        path.write_bytes(data)
        reader = STEPControl_Reader()
        reader.ReadFile(str(path))
        reader.TransferRoots()
        return reader.OneShape()


def _quiet() -> None:
    """Stop the kernel's banner, which it writes where a program's answer stands."""
    from OCP.Message import Message

    messenger = Message.DefaultMessenger_s()
    for printer in list(messenger.Printers()):
        messenger.RemovePrinter(printer)
