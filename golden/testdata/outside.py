# Reads DXF files strictly with ezdxf and prints as JSON, for each: what the
# audit says, the unit, the box of every layer's entities but dimensions, and
# the dimensions as their own points tell them.
import json
import sys

import ezdxf
from ezdxf import bbox


def reading(name):
    doc = ezdxf.readfile(name)
    audit = doc.audit()
    space = doc.modelspace()
    layers = {}
    for e in space:
        if e.dxftype() != "DIMENSION":
            layers.setdefault(e.dxf.layer, []).append(e)
    boxes = {}
    for layer, entities in layers.items():
        box = bbox.extents(entities, fast=False)
        if box.has_data:
            boxes[layer] = [box.extmin.x, box.extmin.y, box.extmax.x, box.extmax.y]
    return {
        "errors": [e.message for e in audit.errors],
        "fixes": [e.message for e in audit.fixes],
        "units": doc.header["$INSUNITS"],
        "count": len(space),
        "boxes": boxes,
        "dimensions": [{"measured": e.get_measurement() * e.override().get("dimlfac"), "text": e.dxf.text}
                       for e in space.query("DIMENSION")],
    }


print(json.dumps([reading(name) for name in sys.argv[1:]]))
