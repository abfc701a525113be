/*
 * A frozen day with SUNDIALS CVODE (BDF): a general-purpose peer for the day's solver, written from the laws alone.
 *
 * It reads the flat text that dump-network.mjs makes of a bare network file. Pressures are eliminated: every evaluation of
 * the right side solves the air network by Newton's method, and the Jacobian carries the flows' dependence on temperature
 * through the implicit function theorem. Thermostats and beds are roots; schedules and windows are stop times.
 *
 * usage: frozen_day DUMP ATOL_K [linear=dense|klu] [jacobian=full|frozen|difference] [repeat=N] [samples=FILE] [every=S]
 *        [order=5] [first=S]
 * Prints one line of JSON: CPU time of one day and the work it took. All numbers SI, temperatures in K.
 */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunlinsol/sunlinsol_klu.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunmatrix/sunmatrix_sparse.h>
#include <time.h>

enum { MAX_NODES = 256, MAX_LINKS = 1024, MAX_PARTS = 64, MAX_WINDOWS = 32, MAX_MODES = 8, MAX_PRESSURES = 16, BATCHES = 5 };

typedef enum { ALWAYS, WINDOWS, THERMOSTAT, MACHINE } ConditionKind;
typedef struct {
  ConditionKind kind;
  int which, count;
  double window[MAX_WINDOWS][2];
} Condition;

typedef enum { ORIFICE, CRACK, FAN } PathKind;
typedef struct {
  PathKind kind;
  int from, to; /* zones */
  double z;
  Condition open;
  double factor;   /* orifice: count Cd A sqrt 2; crack: c */
  double exponent; /* crack: n */
  double linear_below;
  Condition on; /* fan */
  double p0, fan_a, fan_b, a, b, k, stopped_a, stopped_b, stopped_k; /* k: sum of K / 2A2 */
} Path;

typedef struct { int node, unknown; double p_fixed, z_ref; } Zone;
typedef struct { int a, b; double factor; Condition active; } Exchange; /* factor: rho_ref cp Cd/3 w h^1.5 sqrt g */
typedef struct { int node; double watts; Condition active; } Source;
typedef struct { double set; int count; int node[8]; double watts[8]; } Mode;
typedef enum { OFF, HEATING, HOLDING, COASTING } BedState;
typedef struct { int bed; double power_max; int idle, modes; Mode mode[MAX_MODES]; int now; BedState state; } Machine;
typedef struct { int machine, mode; double start, end; } Entry;
typedef struct { int node, on; double on_at, off_at; } Thermostat;

typedef struct {
  /* the plant */
  double duration, g, p_atm, gas, cp, rho_ref, rho_const;
  int scaling, n, total;
  double capacity[MAX_NODES], initial[MAX_NODES];
  int links; int la[MAX_LINKS], lb[MAX_LINKS]; double lg[MAX_LINKS];
  int rays; int ra[MAX_LINKS], rb[MAX_LINKS]; double rc[MAX_LINKS];
  int zones, paths, exchanges, sources, machines, entries, thermostats, unknowns;
  Zone zone[MAX_PARTS]; Path path[MAX_PARTS]; Exchange exchange[MAX_PARTS]; Source source[MAX_PARTS];
  Machine machine[MAX_PARTS]; Entry entry[MAX_PARTS]; Thermostat thermostat[MAX_PARTS];
  /* what is on now, constant between two restarts */
  int np; int open[MAX_PARTS], running[MAX_PARTS], mixing[MAX_PARTS];
  double constant[MAX_NODES];
  /* scratch and warm start */
  double p[MAX_PRESSURES], flow[MAX_PARTS], slope[MAX_PARTS], rho[MAX_PARTS], a[MAX_PRESSURES][MAX_PRESSURES];
  int full, sparse;
  double air_tolerance; /* of the net flow of a zone, relative to the largest flow */
  sunindextype column_at[MAX_NODES][MAX_NODES]; /* position of (row, column) in the sparse matrix, or -1 */
  long rhs, newton, jacobians;
} Plant;

/* ---------------------------------------------------------------- reading */

static FILE *dump;
static void need(int right, const char *what) {
  if (right) return;
  fprintf(stderr, "frozen_day: cannot read %s\n", what);
  exit(1);
}
static double number(void) { double value; need(fscanf(dump, "%lf", &value) == 1, "a number"); return value; }
static int whole(void) { int value; need(fscanf(dump, "%d", &value) == 1, "a whole number"); return value; }
static void word(const char *wanted) {
  char got[64];
  need(fscanf(dump, "%63s", got) == 1 && strcmp(got, wanted) == 0, wanted);
}
static Condition condition(void) {
  Condition c = {0};
  char kind[64];
  need(fscanf(dump, "%63s", kind) == 1, "a condition");
  if (!strcmp(kind, "always")) c.kind = ALWAYS;
  else if (!strcmp(kind, "thermostat")) { c.kind = THERMOSTAT; c.which = whole(); }
  else if (!strcmp(kind, "machine")) { c.kind = MACHINE; c.which = whole(); }
  else {
    need(!strcmp(kind, "windows"), "a condition");
    c.kind = WINDOWS;
    c.count = whole();
    need(c.count <= MAX_WINDOWS, "so many windows");
    for (int i = 0; i < c.count; i++) { c.window[i][0] = number(); c.window[i][1] = number(); }
  }
  return c;
}

static void read_plant(Plant *s, const char *file) {
  dump = fopen(file, "r");
  need(dump != NULL, file);
  word("duration"); s->duration = number();
  word("constants"); s->g = number(); s->p_atm = number(); s->gas = number(); s->cp = number(); s->rho_ref = number();
  double sigma = number();
  word("density"); s->rho_const = number(); /* 0: ideal gas */
  word("scaling"); s->scaling = whole();
  word("states"); s->n = whole();
  word("fixed"); s->total = s->n + whole();
  need(s->total <= MAX_NODES, "so many nodes");
  for (int i = 0; i < s->total; i++) { s->capacity[i] = number(); s->initial[i] = number(); }
  word("links"); s->links = whole();
  need(s->links <= MAX_LINKS, "so many links");
  for (int i = 0; i < s->links; i++) { s->la[i] = whole(); s->lb[i] = whole(); s->lg[i] = number(); }
  word("rays"); s->rays = whole();
  for (int i = 0; i < s->rays; i++) { s->ra[i] = whole(); s->rb[i] = whole(); s->rc[i] = number() * sigma; }
  word("zones"); s->zones = whole();
  for (int i = 0; i < s->zones; i++) {
    Zone *zone = &s->zone[i];
    zone->node = whole();
    zone->unknown = whole() ? s->unknowns++ : -1;
    zone->p_fixed = number(); zone->z_ref = number();
  }
  need(s->unknowns <= MAX_PRESSURES, "so many pressures");
  word("paths"); s->paths = whole();
  for (int i = 0; i < s->paths; i++) {
    Path *path = &s->path[i];
    char kind[64];
    need(fscanf(dump, "%63s", kind) == 1, "a path");
    path->from = whole(); path->to = whole(); path->z = number(); path->open = condition();
    if (!strcmp(kind, "orifice")) {
      path->kind = ORIFICE;
      path->factor = number() * sqrt(2.0); path->linear_below = number();
    } else if (!strcmp(kind, "crack")) {
      path->kind = CRACK;
      path->factor = number(); path->exponent = number(); path->linear_below = number();
    } else {
      need(!strcmp(kind, "fan"), kind);
      path->kind = FAN;
      path->on = condition();
      path->p0 = number(); path->fan_a = number(); path->fan_b = number();
      path->a = number(); path->b = number(); path->k = number();
      path->stopped_a = number(); path->stopped_b = number(); path->stopped_k = number();
    }
  }
  word("exchanges"); s->exchanges = whole();
  for (int i = 0; i < s->exchanges; i++) {
    Exchange *e = &s->exchange[i];
    e->a = whole(); e->b = whole();
    double cd = number(), width = number(), height = number();
    e->factor = s->rho_ref * s->cp * cd / 3.0 * width * pow(height, 1.5) * sqrt(s->g);
    e->active = condition();
  }
  word("sources"); s->sources = whole();
  for (int i = 0; i < s->sources; i++) {
    s->source[i].node = whole(); s->source[i].watts = number(); s->source[i].active = condition();
  }
  word("machines"); s->machines = whole();
  for (int i = 0; i < s->machines; i++) {
    Machine *m = &s->machine[i];
    m->bed = whole(); m->power_max = number(); m->modes = whole(); m->idle = whole();
    need(m->modes <= MAX_MODES, "so many modes");
    for (int j = 0; j < m->modes; j++) {
      m->mode[j].set = number(); m->mode[j].count = whole();
      for (int k = 0; k < m->mode[j].count; k++) { m->mode[j].node[k] = whole(); m->mode[j].watts[k] = number(); }
    }
  }
  word("schedule"); s->entries = whole();
  for (int i = 0; i < s->entries; i++) {
    Entry *e = &s->entry[i];
    e->machine = whole(); e->mode = whole(); e->start = number(); e->end = number();
  }
  word("thermostats"); s->thermostats = whole();
  for (int i = 0; i < s->thermostats; i++) {
    Thermostat *t = &s->thermostat[i];
    t->node = whole(); t->on_at = number(); t->off_at = number(); t->on = whole();
  }
  word("end");
  fclose(dump);
}

/* ---------------------------------------------------------------- air */

/* Flow of a path and its slopes: with pressure, with upstream density, with the fan's scale. */
static double path_flow(const Plant *s, int i, double dp, double rho_from, double rho_to, double *by_dp, double *by_rho,
                        double *by_scale, int *up_is_from) {
  const Path *path = &s->path[i];
  *by_scale = 0.0;
  if (path->kind == FAN) {
    const int on = s->running[i];
    const double scale = s->scaling ? rho_from / s->rho_ref : 1.0;
    const double drive = dp + (on ? scale * path->p0 : 0.0);
    const double a = path->a + (on ? scale * path->fan_a : path->stopped_a);
    const double k = path->k + (on ? 0.0 : path->stopped_k);
    *up_is_from = drive >= 0.0;
    const double rho = *up_is_from ? rho_from : rho_to;
    const double b = path->b + (on ? scale * path->fan_b : path->stopped_b) + k * rho;
    const double root = sqrt(a * a + 4.0 * b * fabs(drive));
    const double q = 2.0 * drive / (a + root);
    *by_dp = rho / root;
    *by_rho = q - rho * k * q * fabs(q) / root;
    if (on) *by_scale = rho * (path->p0 - path->fan_a * q - path->fan_b * q * fabs(q)) / root;
    return rho * q;
  }
  *up_is_from = dp >= 0.0;
  const double rho = *up_is_from ? rho_from : rho_to;
  const double square = dp * dp + path->linear_below * path->linear_below;
  if (path->kind == ORIFICE) {
    const double root = 1.0 / sqrt(sqrt(square));
    const double factor = path->factor * sqrt(rho);
    const double m = factor * dp * root;
    *by_dp = factor * root * (1.0 - 0.5 * dp * dp / square);
    *by_rho = 0.5 * m / rho;
    return m;
  }
  const double part = path->factor * pow(square, 0.5 * (path->exponent - 1.0));
  *by_dp = rho * part * (1.0 + (path->exponent - 1.0) * dp * dp / square);
  *by_rho = part * dp;
  return rho * part * dp;
}

static double zone_pressure(const Plant *s, const double *p, int zone, double z) {
  const Zone *at = &s->zone[zone];
  return (at->unknown < 0 ? at->p_fixed : p[at->unknown]) - s->rho[zone] * s->g * (z - at->z_ref);
}

/* Net flow out of every solved zone, and how it grows with the pressures. */
static void air_residual(Plant *s, const double *p, double *out) {
  const int u = s->unknowns;
  for (int i = 0; i < u; i++) {
    out[i] = 0.0;
    for (int j = 0; j < u; j++) s->a[i][j] = 0.0;
  }
  for (int i = 0; i < s->paths; i++) {
    if (!s->open[i]) { s->flow[i] = 0.0; continue; }
    const Path *path = &s->path[i];
    double by_rho, by_scale;
    int up;
    const double dp = zone_pressure(s, p, path->from, path->z) - zone_pressure(s, p, path->to, path->z);
    const double m = path_flow(s, i, dp, s->rho[path->from], s->rho[path->to], &s->slope[i], &by_rho, &by_scale, &up);
    const int a = s->zone[path->from].unknown, b = s->zone[path->to].unknown;
    s->flow[i] = m;
    if (a >= 0) { out[a] += m; s->a[a][a] += s->slope[i]; }
    if (b >= 0) { out[b] -= m; s->a[b][b] += s->slope[i]; }
    if (a >= 0 && b >= 0) { s->a[a][b] -= s->slope[i]; s->a[b][a] -= s->slope[i]; }
  }
}

/* Factors a (u by u, diagonally dominant) in place, without pivoting. */
static void dense_factor(int u, double a[MAX_PRESSURES][MAX_PRESSURES]) {
  for (int k = 0; k < u; k++)
    for (int i = k + 1; i < u; i++) {
      const double share = a[i][k] / a[k][k];
      a[i][k] = share;
      for (int j = k + 1; j < u; j++) a[i][j] -= share * a[k][j];
    }
}
static void dense_solve(int u, double a[MAX_PRESSURES][MAX_PRESSURES], double *x) {
  for (int k = 0; k < u; k++)
    for (int i = k + 1; i < u; i++) x[i] -= a[i][k] * x[k];
  for (int k = u - 1; k >= 0; k--) {
    for (int j = k + 1; j < u; j++) x[k] -= a[k][j] * x[j];
    x[k] /= a[k][k];
  }
}

/* Newton with a line search along the direction's own derivative: the residual is the gradient of a convex function. */
static void solve_air(Plant *s, const double *t) {
  const int u = s->unknowns;
  double r[MAX_PRESSURES], d[MAX_PRESSURES], trial[MAX_PRESSURES];
  for (int i = 0; i < s->zones; i++)
    s->rho[i] = s->rho_const > 0.0 ? s->rho_const : s->p_atm / (s->gas * t[s->zone[i].node]);
  air_residual(s, s->p, r);
  for (int round = 0; round < 100; round++) {
    double size = 0.0, largest = 1e-6;
    for (int i = 0; i < u; i++) size = fmax(size, fabs(r[i]));
    for (int i = 0; i < s->paths; i++) largest = fmax(largest, fabs(s->flow[i]));
    if (size <= s->air_tolerance * largest) return;
    s->newton++;
    double before = 0.0;
    memcpy(d, r, sizeof d);
    dense_factor(u, s->a);
    dense_solve(u, s->a, d);
    for (int i = 0; i < u; i++) before += d[i] * r[i];
    double length = 1.0;
    for (int halving = 0; halving < 40; halving++, length *= 0.5) {
      double after = 0.0;
      for (int i = 0; i < u; i++) trial[i] = s->p[i] - length * d[i];
      air_residual(s, trial, r);
      for (int i = 0; i < u; i++) after += d[i] * r[i];
      if (fabs(after) <= 0.9 * fabs(before)) break;
    }
    memcpy(s->p, trial, sizeof trial);
  }
}

/* ---------------------------------------------------------------- heat */

static void net_heat(const Plant *s, const double *t, double *q) {
  memcpy(q, s->constant, s->total * sizeof(double));
  for (int i = 0; i < s->links; i++) {
    const double heat = s->lg[i] * (t[s->la[i]] - t[s->lb[i]]);
    q[s->la[i]] -= heat;
    q[s->lb[i]] += heat;
  }
  for (int i = 0; i < s->rays; i++) {
    const double a = t[s->ra[i]], b = t[s->rb[i]], a2 = a * a, b2 = b * b;
    const double heat = s->rc[i] * (a2 * a2 - b2 * b2);
    q[s->ra[i]] -= heat;
    q[s->rb[i]] += heat;
  }
}

static void all_temperatures(const Plant *s, const double *y, double *t) {
  memcpy(t, y, s->n * sizeof(double));
  memcpy(t + s->n, s->initial + s->n, (s->total - s->n) * sizeof(double));
}

static int right_side(realtype now, N_Vector y, N_Vector slope, void *user) {
  (void)now;
  Plant *s = user;
  double t[MAX_NODES], q[MAX_NODES], *out = N_VGetArrayPointer(slope);
  s->rhs++;
  all_temperatures(s, N_VGetArrayPointer(y), t);
  net_heat(s, t, q);
  solve_air(s, t);
  for (int i = 0; i < s->paths; i++) {
    const double m = s->flow[i];
    const int a = s->zone[s->path[i].from].node, b = s->zone[s->path[i].to].node;
    if (m > 0.0) q[b] += m * s->cp * (t[a] - t[b]);
    else if (m < 0.0) q[a] -= m * s->cp * (t[b] - t[a]);
  }
  for (int i = 0; i < s->exchanges; i++) {
    if (!s->mixing[i]) continue;
    const Exchange *e = &s->exchange[i];
    const double dt = t[e->a] - t[e->b], mean = 0.5 * (t[e->a] + t[e->b]);
    const double heat = e->factor * sqrt(fabs(dt) / mean) * dt;
    q[e->a] -= heat;
    q[e->b] += heat;
  }
  for (int i = 0; i < s->n; i++) out[i] = q[i] / s->capacity[i];
  for (int i = 0; i < s->machines; i++)
    if (s->machine[i].state == HOLDING) out[s->machine[i].bed] = 0.0;
  return 0;
}

static inline void add(Plant *s, double *data, int row, int column, double value) {
  if (row >= s->n || column >= s->n) return;
  value /= s->capacity[row];
  if (s->sparse) data[s->column_at[row][column]] += value;
  else data[(long)column * s->n + row] += value;
}

static int jacobian(realtype now, N_Vector y, N_Vector fy, SUNMatrix matrix, void *user, N_Vector t1, N_Vector t2, N_Vector t3) {
  (void)now; (void)fy; (void)t1; (void)t2; (void)t3;
  Plant *s = user;
  double t[MAX_NODES];
  double *data = s->sparse ? SM_DATA_S(matrix) : SM_DATA_D(matrix);
  s->jacobians++;
  if (s->sparse) {
    /* The solver may hand the matrix over with its pattern emptied; the pattern never changes. */
    sunindextype *pointers = SM_INDEXPTRS_S(matrix), *rows = SM_INDEXVALS_S(matrix), count = 0;
    for (int column = 0; column < s->n; column++) {
      pointers[column] = count;
      for (int row = 0; row < s->n; row++)
        if (s->column_at[row][column] >= 0) rows[count++] = row;
    }
    pointers[s->n] = count;
    memset(data, 0, count * sizeof(double));
  } else memset(data, 0, (size_t)s->n * s->n * sizeof(double));
  all_temperatures(s, N_VGetArrayPointer(y), t);
  for (int i = 0; i < s->links; i++) {
    const int a = s->la[i], b = s->lb[i];
    add(s, data, a, a, -s->lg[i]); add(s, data, a, b, s->lg[i]);
    add(s, data, b, b, -s->lg[i]); add(s, data, b, a, s->lg[i]);
  }
  for (int i = 0; i < s->rays; i++) {
    const int a = s->ra[i], b = s->rb[i];
    const double ga = 4.0 * s->rc[i] * t[a] * t[a] * t[a], gb = 4.0 * s->rc[i] * t[b] * t[b] * t[b];
    add(s, data, a, a, -ga); add(s, data, a, b, gb);
    add(s, data, b, b, -gb); add(s, data, b, a, ga);
  }
  for (int i = 0; i < s->exchanges; i++) {
    if (!s->mixing[i]) continue;
    const Exchange *e = &s->exchange[i];
    const double dt = t[e->a] - t[e->b], mean = 0.5 * (t[e->a] + t[e->b]);
    const double root = e->factor * sqrt(fabs(dt) / mean);
    const double by_a = root * (1.5 - 0.25 * dt / mean), by_b = root * (-1.5 - 0.25 * dt / mean);
    add(s, data, e->a, e->a, -by_a); add(s, data, e->a, e->b, -by_b);
    add(s, data, e->b, e->a, by_a); add(s, data, e->b, e->b, by_b);
  }
  solve_air(s, t);
  /* Direct dependence of each flow on the temperatures at its two ends, pressures held. */
  double by_from[MAX_PARTS], by_to[MAX_PARTS], response[MAX_PARTS][MAX_PRESSURES];
  if (s->full) {
    double residual[MAX_PRESSURES];
    air_residual(s, s->p, residual);
    for (int z = 0; z < s->zones; z++)
      for (int k = 0; k < s->unknowns; k++) response[z][k] = 0.0;
    for (int i = 0; i < s->paths; i++) {
      if (!s->open[i]) continue;
      const Path *path = &s->path[i];
      const Zone *from = &s->zone[path->from], *to = &s->zone[path->to];
      double by_dp, by_rho, by_scale;
      int up;
      const double dp = zone_pressure(s, s->p, path->from, path->z) - zone_pressure(s, s->p, path->to, path->z);
      path_flow(s, i, dp, s->rho[path->from], s->rho[path->to], &by_dp, &by_rho, &by_scale, &up);
      const double ideal = s->rho_const > 0.0 ? 0.0 : 1.0;
      const double rho_from = -ideal * s->rho[path->from] / t[from->node], rho_to = -ideal * s->rho[path->to] / t[to->node];
      by_from[i] = (-by_dp * s->g * (path->z - from->z_ref) + (up ? by_rho : 0.0) + (s->scaling ? by_scale / s->rho_ref : 0.0)) * rho_from;
      by_to[i] = (by_dp * s->g * (path->z - to->z_ref) + (up ? 0.0 : by_rho)) * rho_to;
      if (from->unknown >= 0) { response[path->from][from->unknown] += by_from[i]; response[path->to][from->unknown] += by_to[i]; }
      if (to->unknown >= 0) { response[path->from][to->unknown] -= by_from[i]; response[path->to][to->unknown] -= by_to[i]; }
    }
    dense_factor(s->unknowns, s->a);
    for (int z = 0; z < s->zones; z++) dense_solve(s->unknowns, s->a, response[z]); /* -dp/dT of zone z */
  }
  for (int i = 0; i < s->paths; i++) {
    const double m = s->flow[i];
    if (!s->open[i] || m == 0.0) continue;
    const Path *path = &s->path[i];
    const int forward = m > 0.0;
    const int into = forward ? path->to : path->from, out = forward ? path->from : path->to;
    const int row = s->zone[into].node, other = s->zone[out].node;
    const double carried = fabs(m) * s->cp;
    add(s, data, row, other, carried); add(s, data, row, row, -carried);
    if (!s->full || row >= s->n) continue;
    const double lift = s->cp * (t[other] - t[row]) * (forward ? 1.0 : -1.0);
    const int a = s->zone[path->from].unknown, b = s->zone[path->to].unknown;
    for (int z = 0; z < s->zones; z++) {
      if (s->zone[z].node >= s->n) continue;
      double by = -s->slope[i] * ((a >= 0 ? response[z][a] : 0.0) - (b >= 0 ? response[z][b] : 0.0));
      if (z == path->from) by += by_from[i];
      if (z == path->to) by += by_to[i];
      add(s, data, row, s->zone[z].node, lift * by);
    }
  }
  for (int i = 0; i < s->machines; i++) {
    if (s->machine[i].state != HOLDING) continue;
    const int row = s->machine[i].bed;
    for (int column = 0; column < s->n; column++) {
      if (!s->sparse) data[(long)column * s->n + row] = 0.0;
      else if (s->column_at[row][column] >= 0) data[s->column_at[row][column]] = 0.0;
    }
  }
  return 0;
}

static void mark(Plant *s, int row, int column) {
  if (row < s->n && column < s->n) s->column_at[row][column] = 0;
}
static sunindextype make_pattern(Plant *s) {
  for (int i = 0; i < s->n; i++) {
    for (int j = 0; j < s->n; j++) s->column_at[i][j] = -1;
    s->column_at[i][i] = 0;
  }
  for (int i = 0; i < s->links; i++) { mark(s, s->la[i], s->lb[i]); mark(s, s->lb[i], s->la[i]); }
  for (int i = 0; i < s->rays; i++) { mark(s, s->ra[i], s->rb[i]); mark(s, s->rb[i], s->ra[i]); }
  for (int i = 0; i < s->zones; i++)
    for (int j = 0; j < s->zones; j++) mark(s, s->zone[i].node, s->zone[j].node);
  sunindextype count = 0;
  for (int column = 0; column < s->n; column++)
    for (int row = 0; row < s->n; row++)
      if (s->column_at[row][column] >= 0) s->column_at[row][column] = count++;
  return count;
}

/* ---------------------------------------------------------------- switching */

static int holds(const Plant *s, const Condition *c, double now) {
  switch (c->kind) {
    case ALWAYS: return 1;
    case THERMOSTAT: return s->thermostat[c->which].on;
    case MACHINE: return s->machine[c->which].now != s->machine[c->which].idle;
    case WINDOWS:
      for (int i = 0; i < c->count; i++)
        if (c->window[i][0] <= now && now < c->window[i][1]) return 1;
      return 0;
  }
  return 0;
}

/* Power that would keep the bed where it is. */
static double holding_power(const Plant *s, const Machine *m, const double *t) {
  double q[MAX_NODES];
  net_heat(s, t, q);
  double without = m->state == HEATING ? m->power_max : 0.0;
  return -(q[m->bed] - without);
}

static void settle_powers(Plant *s, double now) {
  memset(s->constant, 0, sizeof s->constant);
  for (int i = 0; i < s->sources; i++)
    if (holds(s, &s->source[i].active, now)) s->constant[s->source[i].node] += s->source[i].watts;
  for (int i = 0; i < s->machines; i++) {
    const Machine *m = &s->machine[i];
    const Mode *mode = &m->mode[m->now];
    for (int k = 0; k < mode->count; k++) s->constant[mode->node[k]] += mode->watts[k];
    if (m->state == HEATING) s->constant[m->bed] += m->power_max;
  }
}

/* Sets everything that is constant until the next restart; modes first, then what hangs on them. */
static void settle(Plant *s, double now) {
  for (int i = 0; i < s->paths; i++) {
    s->open[i] = holds(s, &s->path[i].open, now);
    s->running[i] = s->path[i].kind == FAN && holds(s, &s->path[i].on, now);
  }
  for (int i = 0; i < s->exchanges; i++) s->mixing[i] = holds(s, &s->exchange[i].active, now);
  settle_powers(s, now);
}

static void set_modes(Plant *s, double now, const double *t) {
  for (int i = 0; i < s->machines; i++) {
    Machine *m = &s->machine[i];
    m->now = m->idle;
    for (int j = 0; j < s->entries; j++)
      if (s->entry[j].machine == i && s->entry[j].start <= now && now < s->entry[j].end) m->now = s->entry[j].mode;
    const double set = m->mode[m->now].set;
    if (m->bed < 0 || !(set > 0.0)) m->state = OFF;
    else if (m->state == HOLDING && fabs(t[m->bed] - set) < 1e-9) m->state = HOLDING;
    else m->state = t[m->bed] < set ? HEATING : COASTING;
  }
}

static int roots(realtype now, N_Vector y, realtype *out, void *user) {
  (void)now;
  Plant *s = user;
  double t[MAX_NODES];
  all_temperatures(s, N_VGetArrayPointer(y), t);
  for (int i = 0; i < s->thermostats; i++) {
    const Thermostat *at = &s->thermostat[i];
    out[i] = at->on ? t[at->node] - at->off_at : at->on_at - t[at->node];
  }
  for (int i = 0; i < s->machines; i++) {
    const Machine *m = &s->machine[i];
    double *two = out + s->thermostats + 2 * i;
    two[0] = two[1] = 1.0;
    if (m->state == HEATING) two[0] = m->mode[m->now].set - t[m->bed];
    else if (m->state == COASTING) two[0] = t[m->bed] - m->mode[m->now].set;
    else if (m->state == HOLDING) {
      const double power = holding_power(s, m, t);
      two[0] = power;
      two[1] = m->power_max - power;
    }
  }
  return 0;
}

/* ---------------------------------------------------------------- running */

static int by_size(const void *a, const void *b) {
  const double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}
static double breaks[4 * MAX_PARTS * MAX_WINDOWS];
static int break_count;
static void take_break(double at, double duration) { if (at > 0.0 && at < duration) breaks[break_count++] = at; }
static void take_condition(const Condition *c, double duration) {
  for (int i = 0; c->kind == WINDOWS && i < c->count; i++) {
    take_break(c->window[i][0], duration);
    take_break(c->window[i][1], duration);
  }
}
static void find_breaks(const Plant *s) {
  for (int i = 0; i < s->entries; i++) { take_break(s->entry[i].start, s->duration); take_break(s->entry[i].end, s->duration); }
  for (int i = 0; i < s->paths; i++) {
    take_condition(&s->path[i].open, s->duration);
    if (s->path[i].kind == FAN) take_condition(&s->path[i].on, s->duration);
  }
  for (int i = 0; i < s->exchanges; i++) take_condition(&s->exchange[i].active, s->duration);
  for (int i = 0; i < s->sources; i++) take_condition(&s->source[i].active, s->duration);
  qsort(breaks, break_count, sizeof breaks[0], by_size);
  int kept = 0;
  for (int i = 0; i < break_count; i++)
    if (kept == 0 || breaks[i] > breaks[kept - 1]) breaks[kept++] = breaks[i];
  breaks[kept++] = s->duration;
  break_count = kept;
}

typedef struct { long steps, failures, events; double peak[MAX_PARTS]; } Work;

static void look_at_peaks(const Plant *s, const double *y, Work *work) {
  for (int i = 0; i < s->zones; i++)
    if (s->zone[i].node < s->n) work->peak[i] = fmax(work->peak[i], y[s->zone[i].node]);
}

static void one_day(Plant *s, const Plant *fresh, void *cvode, N_Vector y, N_Vector interpolated, double every, FILE *samples,
                    double first, Work *work) {
  double *values = N_VGetArrayPointer(y);
  for (int i = 0; i < s->thermostats; i++) s->thermostat[i].on = fresh->thermostat[i].on;
  for (int i = 0; i < s->machines; i++) s->machine[i].state = OFF;
  memset(s->p, 0, sizeof s->p);
  memcpy(values, s->initial, s->n * sizeof(double));
  memset(work, 0, sizeof *work);
  double now = 0.0, next_sample = 0.0;
  double t[MAX_NODES];
  if (samples) { fwrite(values, sizeof(double), s->n, samples); next_sample = every; }
  look_at_peaks(s, values, work);
  for (int segment = 0; segment < break_count; segment++) {
    const double stop = breaks[segment];
    all_temperatures(s, values, t);
    for (int i = 0; i < s->thermostats; i++) {
      Thermostat *at = &s->thermostat[i];
      if (!at->on && t[at->node] >= at->on_at) at->on = 1;
      else if (at->on && t[at->node] <= at->off_at) at->on = 0;
    }
    set_modes(s, now, t);
    settle(s, now);
    int restart = 1;
    while (now < stop) {
      if (restart) {
        CVodeReInit(cvode, now, y);
        if (first > 0.0) CVodeSetInitStep(cvode, fmin(first, stop - now));
        restart = 0;
      }
      CVodeSetStopTime(cvode, stop);
      realtype reached = now;
      const int flag = CVode(cvode, stop, y, &reached, CV_ONE_STEP);
      if (flag < 0) { fprintf(stderr, "frozen_day: CVODE stopped at %.3f s with flag %d\n", reached, flag); exit(1); }
      now = reached;
      if (samples)
        while (next_sample <= now * (1.0 + 1e-15) && next_sample <= s->duration) {
          CVodeGetDky(cvode, next_sample, 0, interpolated);
          fwrite(N_VGetArrayPointer(interpolated), sizeof(double), s->n, samples);
          next_sample += every;
        }
      look_at_peaks(s, values, work);
      if (flag != CV_ROOT_RETURN) continue;
      long steps = 0, failures = 0;
      CVodeGetNumSteps(cvode, &steps);
      CVodeGetNumErrTestFails(cvode, &failures);
      work->steps += steps; work->failures += failures; work->events++;
      int found[3 * MAX_PARTS];
      CVodeGetRootInfo(cvode, found);
      for (int i = 0; i < s->thermostats; i++)
        if (found[i]) s->thermostat[i].on = !s->thermostat[i].on;
      for (int i = 0; i < s->machines; i++) {
        Machine *m = &s->machine[i];
        const int *two = found + s->thermostats + 2 * i;
        if (m->state == HOLDING) {
          if (two[0]) m->state = COASTING;
          else if (two[1]) m->state = HEATING;
        } else if (two[0] && m->state != OFF) {
          const double set = m->mode[m->now].set;
          m->state = HOLDING;
          settle_powers(s, now);
          values[m->bed] = set;
          all_temperatures(s, values, t);
          const double power = holding_power(s, m, t);
          if (power < 0.0) m->state = COASTING;
          else if (power > m->power_max) m->state = HEATING;
        }
      }
      settle(s, now);
      restart = 1;
    }
    if (!restart) {
      long steps = 0, failures = 0;
      CVodeGetNumSteps(cvode, &steps);
      CVodeGetNumErrTestFails(cvode, &failures);
      work->steps += steps; work->failures += failures;
    }
  }
}

static double cpu_seconds(void) {
  struct timespec at;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &at);
  return at.tv_sec + 1e-9 * at.tv_nsec;
}

static const char *option(int count, char **words, const char *name, const char *otherwise) {
  const size_t length = strlen(name);
  for (int i = 3; i < count; i++)
    if (!strncmp(words[i], name, length) && words[i][length] == '=') return words[i] + length + 1;
  return otherwise;
}

int main(int count, char **words) {
  need(count >= 3, "DUMP ATOL_K");
  static Plant plant, fresh;
  Plant *s = &plant;
  read_plant(s, words[1]);
  fresh = plant;
  find_breaks(s);
  const double tolerance = atof(words[2]);
  const char *jac = option(count, words, "jacobian", "full"), *file = option(count, words, "samples", "");
  const int repeat = atoi(option(count, words, "repeat", "1"));
  const double every = atof(option(count, words, "every", "60")), first = atof(option(count, words, "first", "0"));
  /* The air need not be solved much better than the temperatures are; tighter costs only time. */
  s->air_tolerance = fmin(1e-6, fmax(1e-12, 1e-3 * tolerance));
  s->sparse = !strcmp(option(count, words, "linear", "dense"), "klu");
  s->full = !strcmp(jac, "full");

  SUNContext context;
  SUNContext_Create(NULL, &context);
  N_Vector y = N_VNew_Serial(s->n, context), interpolated = N_VNew_Serial(s->n, context);
  memcpy(N_VGetArrayPointer(y), s->initial, s->n * sizeof(double));
  void *cvode = CVodeCreate(CV_BDF, context);
  CVodeInit(cvode, right_side, 0.0, y);
  CVodeSStolerances(cvode, 0.0, tolerance);
  CVodeSetUserData(cvode, s);
  CVodeSetMaxNumSteps(cvode, 100000000);
  CVodeSetMaxOrd(cvode, atoi(option(count, words, "order", "5")));
  const sunindextype entries = make_pattern(s);
  SUNMatrix matrix = s->sparse ? SUNSparseMatrix(s->n, s->n, entries, CSC_MAT, context) : SUNDenseMatrix(s->n, s->n, context);
  SUNLinearSolver linear = s->sparse ? SUNLinSol_KLU(y, matrix, context) : SUNLinSol_Dense(y, matrix, context);
  CVodeSetLinearSolver(cvode, linear, matrix);
  if (strcmp(jac, "difference")) CVodeSetJacFn(cvode, jacobian);
  CVodeRootInit(cvode, s->thermostats + 2 * s->machines, roots);
  CVodeSetNoInactiveRootWarn(cvode);

  Work work;
  double cpu = 0.0;
  if (*file) {
    FILE *samples = fopen(file, "wb");
    need(samples != NULL, file);
    one_day(s, &fresh, cvode, y, interpolated, every, samples, first, &work);
    fclose(samples);
  }
  if (repeat > 0) {
    one_day(s, &fresh, cvode, y, interpolated, every, NULL, first, &work); /* warms caches */
    s->rhs = s->newton = s->jacobians = 0;
    cpu = INFINITY; /* the quickest of a few batches: other programs can only slow one down */
    for (int batch = 0; batch < BATCHES; batch++) {
      const double start = cpu_seconds();
      for (int i = 0; i < repeat; i++) one_day(s, &fresh, cvode, y, interpolated, every, NULL, first, &work);
      cpu = fmin(cpu, (cpu_seconds() - start) / repeat);
    }
  }
  const int days = repeat > 0 ? BATCHES * repeat : 1;
  printf("{\"cpuMs\": %.6g, \"steps\": %ld, \"rejected\": %ld, \"events\": %ld, \"rightSides\": %ld, \"jacobians\": %ld, \"airRounds\": %ld, \"peaks\": [",
         1e3 * cpu, work.steps, work.failures, work.events, s->rhs / days, s->jacobians / days, s->newton / days);
  for (int i = 0, said = 0; i < s->zones; i++)
    if (s->zone[i].node < s->n) printf("%s%.12g", said++ ? ", " : "", work.peak[i]);
  printf("]}\n");
  return 0;
}
