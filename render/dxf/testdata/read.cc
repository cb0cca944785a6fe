// Reads a DXF file with dxflib and prints what it holds: the unit, then a line
// for each entity. Debian packages g++ and libdxflib-dev.
#include <cstdio>
#include <string>
#include <dxflib/dl_creationadapter.h>
#include <dxflib/dl_dxf.h>

class Reader : public DL_CreationAdapter {
	bool open = false;
	void shut() {
		if (open) printf("\n");
		open = false;
	}
	std::string held;
	const char *layer() { return (held = attributes.getLayer()).c_str(); }
	void other(const char *kind) {
		shut();
		printf("%s %s\n", kind, layer());
	}

public:
	void setVariableInt(const std::string &name, int value, int) override {
		if (name == "$INSUNITS" || name == "$MEASUREMENT") printf("%s %d\n", name.c_str(), value);
	}
	void addPolyline(const DL_PolylineData &p) override {
		shut();
		printf("POLYLINE %s %d", layer(), p.flags);
		open = true;
	}
	void addVertex(const DL_VertexData &v) override { printf(" %.12f %.12f %.12f", v.x, v.y, v.bulge); }
	void addCircle(const DL_CircleData &c) override {
		shut();
		printf("CIRCLE %s %.12f %.12f %.12f\n", layer(), c.cx, c.cy, c.radius);
	}
	void endSequence() override { shut(); }
	void endEntity() override { shut(); }
	void addLine(const DL_LineData &) override { other("LINE"); }
	void addArc(const DL_ArcData &) override { other("ARC"); }
	void addText(const DL_TextData &) override { other("TEXT"); }
	void addMText(const DL_MTextData &) override { other("MTEXT"); }
	void addSpline(const DL_SplineData &) override { other("SPLINE"); }
	void addEllipse(const DL_EllipseData &) override { other("ELLIPSE"); }
	void addInsert(const DL_InsertData &) override { other("INSERT"); }
	void addHatch(const DL_HatchData &) override { other("HATCH"); }
	void addPoint(const DL_PointData &) override { other("POINT"); }
	void finish() { shut(); }
};

int main(int argc, char **argv) {
	Reader reader;
	DL_Dxf dxf;
	if (argc < 2 || !dxf.in(argv[1], &reader)) return 1;
	reader.finish();
	return 0;
}
