//go:build clipper

#include <chrono>
#include <cstdint>
#include <polyclipping/clipper.hpp>

using namespace ClipperLib;

// Rings come as points (x, y pairs) and the number of points of each.
static Paths read(const int64_t *points, const int32_t *sizes, int n) {
  Paths out(n);
  for (int i = 0; i < n; i++) {
    out[i].reserve(sizes[i]);
    for (int k = 0; k < sizes[i]; k++, points += 2) {
      out[i].push_back(IntPoint(points[0], points[1]));
    }
  }
  return out;
}

struct Result {
  Paths rings;
  int64_t nanoseconds;
};

extern "C" {

void *combine(int op, const int64_t *a, const int32_t *sizesA, int na, const int64_t *b,
              const int32_t *sizesB, int nb) {
  static const ClipType ops[] = {ctUnion, ctIntersection, ctDifference, ctXor};
  Result *r = new Result;
  Paths subject = read(a, sizesA, na), clip = read(b, sizesB, nb);
  auto start = std::chrono::steady_clock::now();
  Clipper c;
  c.AddPaths(subject, ptSubject, true);
  c.AddPaths(clip, ptClip, true);
  PolyTree tree; // holes with their outers, as geom gives them
  c.Execute(ops[op], tree, pftNonZero, pftNonZero);
  PolyTreeToPaths(tree, r->rings);
  r->nanoseconds = std::chrono::nanoseconds(std::chrono::steady_clock::now() - start).count();
  return r;
}

void *grow(const int64_t *a, const int32_t *sizes, int n, double d, double arc) {
  Result *r = new Result;
  Paths subject = read(a, sizes, n);
  auto start = std::chrono::steady_clock::now();
  ClipperOffset o(2, arc);
  o.AddPaths(subject, jtRound, etClosedPolygon);
  PolyTree tree;
  o.Execute(tree, d);
  PolyTreeToPaths(tree, r->rings);
  r->nanoseconds = std::chrono::nanoseconds(std::chrono::steady_clock::now() - start).count();
  return r;
}

int64_t took(void *p) { return static_cast<Result *>(p)->nanoseconds; }

int rings(void *p) { return static_cast<Result *>(p)->rings.size(); }

int ring_size(void *p, int i) { return static_cast<Result *>(p)->rings[i].size(); }

void ring_points(void *p, int i, int64_t *to) {
  for (const IntPoint &q : static_cast<Result *>(p)->rings[i]) {
    *to++ = q.X;
    *to++ = q.Y;
  }
}

void drop(void *p) { delete static_cast<Result *>(p); }
}
