/* Integrates an exported cure problem with CVODE: BDF, GMRES, a line preconditioner along
 * the upright direction. Serial, double precision.
 *
 *   cc -O3 -march=native -o heat_cvode heat_cvode.c -lsundials_cvode -lsundials_nvecserial -lm
 *   ./heat_cvode FILE RTOL HOURS
 *
 * FILE is written by `pourbench heat --peer`: see cmd/pourbench/heatpeer.go. Prints
 * peak C, hour, seconds, steps, right hand sides.
 */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <sunlinsol/sunlinsol_spgmr.h>
#include <time.h>

typedef struct {
  int32_t n, links, nx;
  int32_t *start, *to, *place, *over; /* over: cell above, -1 without */
  double *cap, *film, *heat, *g, *temp, *cure, *gover;
  double *low, *dia, *upp, *pa; /* preconditioner, factored */
  int32_t *under;
  double air;
  double par[8]; /* k1 e1 k2 e2 m tg0 tg1 lambda */
} Problem;

static double rate(const Problem *p, double a, double t) {
  const double *q = p->par;
  double x = (1 / (22 + 273.15) - 1 / (t + 273.15)) / 8.314462618;
  if (a < 0) a = 0;
  double left = a < 1 ? 1 - a : 0;
  double tg = q[5] + (q[6] - q[5]) * q[7] * a / (1 - (1 - q[7]) * a);
  return (q[0] * exp(q[1] * x) + q[2] * exp(q[3] * x) * pow(a, q[4])) * left * left / (1 + exp((tg - t - 12) / 7));
}

static int rhs(realtype t, N_Vector y, N_Vector f, void *user) {
  Problem *p = user;
  const double *u = NV_DATA_S(y);
  double *d = NV_DATA_S(f);
  for (int i = 0; i < p->n; i++) {
    double q = p->film[i] * (p->air - u[i]);
    for (int l = p->start[i]; l < p->start[i + 1]; l++) q += p->g[l] * (u[p->to[l]] - u[i]);
    double r = 0;
    if (p->heat[i] > 0) r = rate(p, u[p->n + i], u[i]);
    d[p->n + i] = r;
    d[i] = (q + p->heat[i] * r) / p->cap[i];
  }
  return 0;
}

static int prepare(realtype t, N_Vector y, N_Vector fy, booleantype jok, booleantype *jcur, realtype gamma, void *user) {
  Problem *p = user;
  const double *u = NV_DATA_S(y);
  for (int i = 0; i < p->n; i++) {
    double sum = p->film[i], rt = 0;
    for (int l = p->start[i]; l < p->start[i + 1]; l++) sum += p->g[l];
    p->pa[i] = 1;
    if (p->heat[i] > 0) {
      double a = u[p->n + i], r = rate(p, a, u[i]);
      rt = (rate(p, a, u[i] + 1e-3) - r) / 1e-3;
      p->pa[i] = 1 - gamma * (rate(p, a + 1e-5, u[i]) - r) / 1e-5;
    }
    p->dia[i] = 1 + gamma * (sum - p->heat[i] * rt) / p->cap[i];
    p->low[i] = -gamma * p->gover[i] / p->cap[i];
    p->upp[i] = p->under[i] >= 0 ? -gamma * p->gover[p->under[i]] / p->cap[i] : 0;
  }
  for (int i = 0; i < p->n; i++) { /* cells over come first */
    if (p->over[i] >= 0) p->dia[i] -= p->low[i] * p->upp[p->over[i]];
    p->dia[i] = 1 / p->dia[i];
    p->upp[i] *= p->dia[i];
  }
  *jcur = 1;
  return 0;
}

static int apply(realtype t, N_Vector y, N_Vector fy, N_Vector r, N_Vector z, realtype gamma, realtype delta, int lr, void *user) {
  Problem *p = user;
  const double *b = NV_DATA_S(r);
  double *x = NV_DATA_S(z);
  for (int i = 0; i < p->n; i++) {
    double v = b[i];
    if (p->over[i] >= 0) v -= p->low[i] * x[p->over[i]];
    x[i] = v * p->dia[i];
    x[p->n + i] = b[p->n + i] / p->pa[i];
  }
  for (int i = p->n - 1; i >= 0; i--)
    if (p->under[i] >= 0) x[i] -= p->upp[i] * x[p->under[i]];
  return 0;
}

static void *take(FILE *f, size_t size, size_t n) {
  void *v = malloc(size * n + 1);
  if (!v || fread(v, size, n, f) != n) { fprintf(stderr, "short file\n"); exit(1); }
  return v;
}

static Problem load(const char *path) {
  Problem p;
  FILE *f = fopen(path, "rb");
  if (!f) { perror(path); exit(1); }
  int32_t *head = take(f, 4, 3);
  p.n = head[0]; p.links = head[1]; p.nx = head[2];
  double *par = take(f, 8, 9);
  for (int i = 0; i < 8; i++) p.par[i] = par[i];
  p.air = par[8];
  p.start = take(f, 4, p.n + 1); p.to = take(f, 4, p.links); p.place = take(f, 4, p.n);
  p.cap = take(f, 8, p.n); p.film = take(f, 8, p.n); p.heat = take(f, 8, p.n);
  p.temp = take(f, 8, p.n); p.cure = take(f, 8, p.n); p.g = take(f, 8, p.links);
  fclose(f);
  p.over = malloc(4 * p.n); p.under = malloc(4 * p.n);
  p.low = malloc(8 * p.n); p.dia = malloc(8 * p.n); p.upp = malloc(8 * p.n); p.pa = malloc(8 * p.n); p.gover = calloc(p.n, 8);
  for (int i = 0; i < p.n; i++) p.over[i] = p.under[i] = -1;
  for (int i = 0; i < p.n; i++)
    for (int l = p.start[i]; l < p.start[i + 1]; l++)
      if (p.place[i] - p.place[p.to[l]] == p.nx) { p.over[i] = p.to[l]; p.under[p.to[l]] = i; p.gover[i] = p.g[l]; }
  return p;
}

static double now(void) { struct timespec t; clock_gettime(CLOCK_MONOTONIC, &t); return t.tv_sec + 1e-9 * t.tv_nsec; }
static double cpu(void) { struct timespec t; clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t); return t.tv_sec + 1e-9 * t.tv_nsec; }

int main(int argc, char **argv) {
  if (argc != 4) { fprintf(stderr, "usage: heat_cvode FILE RTOL HOURS\n"); return 2; }
  Problem p = load(argv[1]);
  double rtol = atof(argv[2]), end = 3600 * atof(argv[3]);
  SUNContext ctx;
  SUNContext_Create(NULL, &ctx);
  N_Vector y = N_VNew_Serial(2 * p.n, ctx), tol = N_VNew_Serial(2 * p.n, ctx);
  for (int i = 0; i < p.n; i++) {
    NV_Ith_S(y, i) = p.temp[i]; NV_Ith_S(y, p.n + i) = p.cure[i];
    NV_Ith_S(tol, i) = 40 * rtol; NV_Ith_S(tol, p.n + i) = rtol;
  }
  double wall = now(), used = cpu();
  void *cv = CVodeCreate(CV_BDF, ctx);
  CVodeInit(cv, rhs, 0, y);
  CVodeSVtolerances(cv, rtol, tol);
  CVodeSetUserData(cv, &p);
  CVodeSetMaxNumSteps(cv, 100000);
  SUNLinearSolver ls = SUNLinSol_SPGMR(y, SUN_PREC_LEFT, 10, ctx);
  CVodeSetLinearSolver(cv, ls, NULL);
  CVodeSetPreconditioner(cv, prepare, apply);
  double t = 0, peak = -1e9, at = 0, t3[3] = {0}, v3[3] = {0};
  long seen = 0;
  while (t < end) {
    int flag = CVode(cv, end, y, &t, CV_ONE_STEP);
    if (flag < 0) { fprintf(stderr, "cvode: %d\n", flag); return 1; }
    double hot = -1e9;
    for (int i = 0; i < p.n; i++) if (p.heat[i] > 0 && NV_Ith_S(y, i) > hot) hot = NV_Ith_S(y, i);
    t3[0] = t3[1]; t3[1] = t3[2]; t3[2] = t; v3[0] = v3[1]; v3[1] = v3[2]; v3[2] = hot;
    if (hot > peak) { peak = hot; at = t; }
    if (++seen > 2 && v3[1] >= peak && v3[1] > v3[0] && v3[1] >= v3[2]) { /* parabola through three steps */
      double a = t3[0] - t3[1], b = t3[2] - t3[1], ya = v3[0] - v3[1], yb = v3[2] - v3[1];
      double c = (yb / b - ya / a) / (b - a), s = ya / a - c * a, x = -s / (2 * c);
      peak = v3[1] + s * x + c * x * x; at = t3[1] + x;
    }
  }
  long steps, calls;
  CVodeGetNumSteps(cv, &steps);
  CVodeGetNumRhsEvals(cv, &calls);
  printf("%.4f %.4f %.4f %.4f %ld %ld\n", peak, at / 3600, now() - wall, cpu() - used, steps, calls);
  return 0;
}
