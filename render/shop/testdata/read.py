# Reads DXF files strictly with ezdxf and prints for each, on one line of JSON:
# what the audit says, the unit, and kinds, layers and corners of its entities.
import json
import sys

import ezdxf

for name in sys.argv[1:]:
    doc = ezdxf.readfile(name)
    audit = doc.audit()
    entities = []
    for e in doc.modelspace():
        d = {"kind": e.dxftype(), "layer": e.dxf.layer, "closed": True}
        if e.dxftype() == "CIRCLE":
            d.update(points=[[e.dxf.center.x, e.dxf.center.y, 0]], radius=e.dxf.radius)
        elif e.dxftype() == "LWPOLYLINE":
            d.update(points=[list(p) for p in e.get_points("xyb")], closed=bool(e.closed))
        elif e.dxftype() == "POLYLINE":
            d.update(points=[[v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0)] for v in e.vertices], closed=bool(e.is_closed))
        entities.append(d)
    print(json.dumps({
        "faults": [m.message for m in audit.errors + audit.fixes],
        "units": doc.header["$INSUNITS"], "metric": doc.header["$MEASUREMENT"],
        "layers": [x.dxf.name for x in doc.layers], "entities": entities,
    }))
