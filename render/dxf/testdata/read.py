# Reads a DXF file strictly with ezdxf and prints what it holds as JSON: what
# the audit says, and every entity of model space with its measures.
import json
import math
import sys

import ezdxf
from ezdxf.math import arc_angle_span_deg


def points(entity):
    return [[v.x, v.y] for v in entity]


def describe(e):
    d = {"kind": e.dxftype(), "layer": e.dxf.layer, "handle": e.dxf.handle, "line": e.dxf.linetype,
         "weight": e.dxf.lineweight, "colour": e.dxf.color}
    kind = e.dxftype()
    if kind == "LINE":
        d["points"] = points([e.dxf.start, e.dxf.end])
    elif kind == "CIRCLE":
        d.update(radius=e.dxf.radius, points=points([e.dxf.center]))
    elif kind == "ARC":
        d.update(radius=e.dxf.radius, points=points([e.start_point, e.end_point, e.dxf.center]),
                 sweep=arc_angle_span_deg(e.dxf.start_angle, e.dxf.end_angle))
    elif kind == "LWPOLYLINE":
        d.update(closed=bool(e.closed), points=[[p[0], p[1]] for p in e.get_points("xy")],
                 bulges=[p[0] for p in e.get_points("b")])
    elif kind == "POLYLINE":
        d.update(closed=bool(e.is_closed), points=[[v.dxf.location.x, v.dxf.location.y] for v in e.vertices],
                 bulges=[v.dxf.get("bulge", 0) for v in e.vertices])
    elif kind == "TEXT":
        align, at, _ = e.get_pos()
        d.update(text=e.plain_text(), raw=e.dxf.text, align=align, height=e.dxf.height, rotation=e.dxf.rotation,
                 points=points([at, e.dxf.insert]))
    elif kind == "SOLID":
        d["points"] = points([e.dxf.vtx0, e.dxf.vtx1, e.dxf.vtx2, e.dxf.vtx3])
    elif kind == "HATCH":
        d.update(solid=bool(e.dxf.solid_fill), paths=len(e.paths.paths),
                 points=[[v[0], v[1]] for p in e.paths.paths for v in p.vertices],
                 bulges=[v[2] for p in e.paths.paths for v in p.vertices])
    elif kind == "DIMENSION":
        block = e.get_geometry_block()
        factor = e.override().get("dimlfac")
        d.update(text=e.dxf.text, measured=e.get_measurement() * factor, stored=e.dxf.actual_measurement,
                 style=e.dxf.dimstyle, factor=factor, block=[describe(x) for x in block],
                 points=points([e.dxf.defpoint2, e.dxf.defpoint3, e.dxf.defpoint, e.dxf.text_midpoint]))
    return d


doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
print(json.dumps({
    "errors": [e.message for e in audit.errors],
    "fixes": [e.message for e in audit.fixes],
    "seed": doc.header["$HANDSEED"],
    "units": doc.header["$INSUNITS"],
    "metric": doc.header.get("$MEASUREMENT", -1),
    "dashes": doc.header.get("$LTSCALE", 1),
    "min": list(doc.header["$EXTMIN"]),
    "max": list(doc.header["$EXTMAX"]),
    "version": doc.dxfversion,
    "encoding": doc.encoding,
    "lines": sorted(t.dxf.name for t in doc.linetypes),
    "paper": len(doc.layout("Layout1")) if doc.dxfversion > "AC1009" else 0,
    "entities": [describe(e) for e in doc.modelspace()],
}))
