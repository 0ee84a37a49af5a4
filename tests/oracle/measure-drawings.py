"""Length and box of what each drawing shows in model space, read by ezdxf (MIT), which shares no code with Isobath.

Reads paths from standard input, one a line, and prints one JSON object a file: curves counted, length (in all and by kind) and box in
drawing units, and the kinds that it met. Lines, arcs and circles by their closed forms, ellipses and splines by chords.
"""
import json
import math
import signal
import sys

import ezdxf
from ezdxf import recover

CURVES = {"LINE", "ARC", "CIRCLE", "ELLIPSE", "SPLINE", "LWPOLYLINE", "POLYLINE"}
SECONDS_A_FILE = 60
DEEPEST = 40


class Measure:
    def __init__(self, document):
        self.document = document
        self.length = 0.0
        self.curves = 0
        self.box = [math.inf, math.inf, -math.inf, -math.inf]
        self.kinds = {}
        self.lengths = {}
        self.tilted = 0

    def reach(self, x, y):
        box = self.box
        box[0] = min(box[0], x)
        box[1] = min(box[1], y)
        box[2] = max(box[2], x)
        box[3] = max(box[3], y)

    def hidden(self, entity, outer):
        if entity.dxf.get("invisible", 0) == 1:
            return True
        name = outer if entity.dxf.layer == "0" and outer is not None else entity.dxf.layer
        if name not in self.document.layers:
            return False
        layer = self.document.layers.get(name)
        return layer.is_frozen() or (layer.is_off() and entity.dxftype() != "INSERT")

    def take(self, entity, outer=None, depth=0):
        kind = entity.dxftype()
        if depth == 0:
            self.kinds[kind] = self.kinds.get(kind, 0) + 1
        if self.hidden(entity, outer):
            return
        if kind == "INSERT" and depth < DEEPEST:
            layer = outer if entity.dxf.layer == "0" and outer is not None else entity.dxf.layer
            for each in entity.multi_insert() if entity.mcount > 1 else [entity]:
                for inner in each.virtual_entities():
                    self.take(inner, layer, depth + 1)
            return
        if kind not in CURVES:
            return
        if kind == "POLYLINE" and (entity.is_polygon_mesh or entity.is_poly_face_mesh):
            return
        before = self.length
        self.measure(entity, kind)
        if self.length > before:
            self.curves += 1
            self.lengths[kind] = self.lengths.get(kind, 0.0) + self.length - before

    def measure(self, entity, kind):
        if kind in ("LWPOLYLINE", "POLYLINE"):
            for piece in entity.virtual_entities():
                self.measure(piece, piece.dxftype())
        elif kind == "LINE":
            self.chords([entity.dxf.start, entity.dxf.end])
        elif kind in ("ARC", "CIRCLE"):
            self.arc(entity, kind)
        elif kind == "ELLIPSE":
            if abs(abs(entity.dxf.extrusion.normalize().z) - 1) > 1e-6:
                self.tilted += 1
            # The library turns a whole turn into none where its end is a rounding past it, and where it transforms blocks.
            start = entity.dxf.start_param
            sweep = (entity.dxf.end_param - start) % math.tau
            if sweep < 1e-6:
                sweep = math.tau
            self.chords(list(entity.vertices([start + sweep * n / 4000 for n in range(4001)])))
        elif kind == "SPLINE":
            tool = entity.construction_tool()
            knots = sorted(set(tool.knots()))
            steps = max(64, 40000 // max(1, len(knots)))
            self.chords(list(tool.points(_spread(knots, tool, steps))))

    def arc(self, entity, kind):
        ocs = entity.ocs()
        z = entity.dxf.extrusion.normalize().z
        if abs(abs(z) - 1) > 1e-6:
            self.tilted += 1
        radius = entity.dxf.radius
        center = ocs.to_wcs(entity.dxf.center)
        start, end = (0.0, 360.0) if kind == "CIRCLE" else (entity.dxf.start_angle, entity.dxf.end_angle)
        sweep = 360.0 if kind == "CIRCLE" else (end - start) % 360.0
        if kind == "ARC" and sweep == 0.0 and start != end:
            sweep = 360.0
        self.length += radius * math.radians(sweep)
        angles = [start, start + sweep] + [90.0 * n for n in range(-8, 17) if start < 90.0 * n < start + sweep]
        for angle in angles:
            turn = math.radians(angle)
            self.reach(center.x + math.copysign(1, z) * radius * math.cos(turn), center.y + radius * math.sin(turn))

    def chords(self, points):
        for a, b in zip(points, points[1:]):
            self.length += math.hypot(b.x - a.x, b.y - a.y)
        for each in points:
            self.reach(each.x, each.y)


def _spread(knots, tool, steps):
    low, high = tool.knots()[tool.order - 1], tool.knots()[tool.count]
    inner = [each for each in knots if low <= each <= high]
    for a, b in zip(inner, inner[1:]):
        for n in range(steps):
            yield a + (b - a) * n / steps
    yield high


def alarmed(*_):
    raise TimeoutError("no answer within its time")


def measure(path):
    try:
        document = ezdxf.readfile(path)
    except Exception:
        document, _ = recover.readfile(path)
    found = Measure(document)
    for entity in document.modelspace():
        found.take(entity)
    return {
        "curves": found.curves,
        "length": found.length,
        "box": found.box if found.curves > 0 else None,
        "kinds": found.kinds,
        "lengths": found.lengths,
        "tilted": found.tilted,
    }


signal.signal(signal.SIGALRM, alarmed)
for line in sys.stdin:
    path = line.rstrip("\n")
    signal.alarm(SECONDS_A_FILE)
    try:
        row = measure(path)
    except Exception as fault:
        row = {"fault": f"{type(fault).__name__}: {fault}"[:200]}
    signal.alarm(0)
    print(json.dumps({"path": path, **row}), flush=True)
