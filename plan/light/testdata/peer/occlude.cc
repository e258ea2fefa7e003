// The direct light of the reference scene by a general ray tracer, for comparison: every point of
// every lamp against every point of the floor, sixteen neighbouring points of the floor at a time. Reads the scene
// that peer_test.go writes, and writes the field and the seconds that it took on one core.
#include <embree3/rtcore.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <vector>

struct Vec { float x, y, z; };
static Vec operator-(Vec a, Vec b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
static float dot(Vec a, Vec b) { return a.x * b.x + a.y * b.y + a.z * b.z; }

enum Kind { Cosine, Uniform, Line, Axial, Gridded };

struct Lamp {
  int kind, onesided;
  float gain, across, over;
  Vec axis, right, up;
  std::vector<float> table;
  std::vector<Vec> points;
};

static FILE *in;

static double number() {
  double v;
  if (fscanf(in, "%lf", &v) != 1) {
    fprintf(stderr, "the scene ends early\n");
    exit(2);
  }
  return v;
}

static Vec vec() {
  Vec v;
  v.x = number(), v.y = number(), v.z = number();
  return v;
}

// light is what a level point that looks up gets from one point of a lamp, v away from it.
static inline float light(const Lamp &l, Vec v) {
  float ahead = dot(v, l.axis), fall = -v.z, square = dot(v, v);
  if (fall <= 0 || (l.onesided && ahead <= 0)) return 0;
  switch (l.kind) {
  case Cosine:
    return ahead > 0 ? l.gain * ahead * fall / (square * square) : 0;
  case Gridded: {
    float open = ahead - l.across * std::fabs(dot(v, l.right)), wide = ahead - l.over * std::fabs(dot(v, l.up));
    return open > 0 && wide > 0 ? l.gain * open * wide * fall / (ahead * square * square) : 0;
  }
  }
  float inverse = 1 / std::sqrt(square);
  float value = l.gain;
  if (l.kind == Line) {
    float a = dot(v, l.right) * inverse;
    value *= std::sqrt(std::fmax(0.f, 1 - a * a));
  }
  if (l.kind == Axial) {
    float s = (l.table.size() - 2) * std::sqrt(std::fmax(0.f, 0.5f - 0.5f * ahead * inverse));
    int k = int(s);
    value = l.table[k] + (s - k) * (l.table[k + 1] - l.table[k]);
  }
  return value * fall * inverse / square;
}

int main(int argc, char **argv) {
  if (argc != 3 || !(in = fopen(argv[1], "r"))) return 2;
  RTCDevice device = rtcNewDevice("threads=1,set_affinity=0");
  RTCScene scene = rtcNewScene(device);
  rtcSetSceneBuildQuality(scene, RTC_BUILD_QUALITY_HIGH);
  int corners = int(number());
  RTCGeometry mesh = rtcNewGeometry(device, RTC_GEOMETRY_TYPE_TRIANGLE);
  Vec *at = (Vec *)rtcSetNewGeometryBuffer(mesh, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3, sizeof(Vec), corners);
  unsigned *index = (unsigned *)rtcSetNewGeometryBuffer(mesh, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3, 12, corners / 3);
  for (int i = 0; i < corners; i++) at[i] = vec(), index[i] = i;
  rtcCommitGeometry(mesh);
  rtcAttachGeometry(scene, mesh);
  rtcCommitScene(scene);

  Vec origin = vec();
  float step = number();
  int nu = int(number()), nv = int(number());
  int count = int(number());
  std::vector<Lamp> lamps(count);
  for (Lamp &l : lamps) {
    l.kind = int(number()), l.onesided = int(number());
    l.gain = number(), l.across = number(), l.over = number();
    l.axis = vec(), l.right = vec(), l.up = vec();
    l.table.resize(int(number()));
    for (float &v : l.table) v = number();
    l.points.resize(int(number()));
    for (Vec &p : l.points) p = vec();
  }

  std::vector<double> field(nu * nv);
  double best = 1e9;
  for (int run = 0; run < 8; run++) {
    std::fill(field.begin(), field.end(), 0);
    clock_t start = clock();
    for (const Lamp &l : lamps) {
      std::vector<float> sum(nu * nv + 16, 0);
      for (const Vec &p : l.points)
        for (int j = 0; j < nv; j++)
          for (int i = 0; i < nu; i += 16) {
            alignas(64) RTCRay16 ray;
            alignas(64) int valid[16];
            alignas(64) float value[16];
            int any = 0;
            for (int k = 0; k < 16; k++) {
              Vec q = {origin.x + step * (i + k), origin.y + step * j, origin.z};
              Vec v = q - p;
              value[k] = i + k < nu ? light(l, v) : 0;
              valid[k] = value[k] > 0 ? -1 : 0;
              any |= valid[k];
              ray.org_x[k] = p.x, ray.org_y[k] = p.y, ray.org_z[k] = p.z;
              ray.dir_x[k] = v.x, ray.dir_y[k] = v.y, ray.dir_z[k] = v.z;
              ray.tnear[k] = 1e-5f, ray.tfar[k] = 1 - 1e-5f;
              ray.mask[k] = -1, ray.flags[k] = 0, ray.time[k] = 0;
            }
            if (!any) continue;
            RTCIntersectContext context;
            rtcInitIntersectContext(&context);
            context.flags = RTC_INTERSECT_CONTEXT_FLAG_COHERENT;
            rtcOccluded16(valid, scene, &context, &ray);
            float *row = &sum[j * nu + i];
            for (int k = 0; k < 16; k++) row[k] += valid[k] && ray.tfar[k] >= 0 ? value[k] : 0;
          }
      for (size_t n = 0; n < field.size(); n++) field[n] += sum[n] / l.points.size();
    }
    best = std::fmin(best, double(clock() - start) / CLOCKS_PER_SEC);
  }
  FILE *out = fopen(argv[2], "w");
  fprintf(out, "%.6f\n", best);
  for (double v : field) fprintf(out, "%.7g\n", v);
  fclose(out);
  return 0;
}
