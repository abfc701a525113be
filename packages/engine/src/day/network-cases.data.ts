// Made by cases/reference/collect.mjs from cases/network and cases/frozen; a test holds the two together.

import type { NetworkCase } from './network-case.ts';

export const networkCases: readonly NetworkCase[] = [
 {
  "id": "day-43",
  "title": "A day of two stacked bays with two printing machines: 43 temperatures, 2 pressures",
  "yaml": "# A day of two stacked bays with a machine in each, frozen to measure the solver with. Every figure is invented.\n# 43 temperatures (2 of air, 8 solids, 11 walls of 3 slices), 2 solved pressures, 7 to 8 air paths, two beds, one thermostat,\n# three door openings. SI units; temperatures in degC; times in s; keys as docs/network-file.md says.\nid: day-43\ntitle: \"A day of two stacked bays with two printing machines: 43 temperatures, 2 pressures\"\nduration_s: 86400.0\ndensity: { model: ideal_gas }\nfan_density_scaling: true\nT0_C: 21.0\nzones:\n  - { name: room, pressure: fixed, z_ref_m: 0.0, volume_m3: 40.0, conc: fixed, p_ref_Pa: 0.0, T: fixed, T_C: 21.0 }\n  - { name: low, pressure: solved, z_ref_m: 0.1, volume_m3: 0.25, conc: fixed, T: free, heat_capacity_J_K: 2400.0 }\n  - { name: high, pressure: solved, z_ref_m: 0.85, volume_m3: 0.25, conc: fixed, T: free, heat_capacity_J_K: 2600.0 }\nnodes:\n  - { name: bed_low, C_J_K: 900.0 }\n  - { name: frame_low, C_J_K: 5200.0 }\n  - { name: spools_low, C_J_K: 4300.0 }\n  - { name: supply_low, C_J_K: 640.0 }\n  - { name: bed_high, C_J_K: 1150.0 }\n  - { name: frame_high, C_J_K: 6100.0 }\n  - { name: spools_high, C_J_K: 6400.0 }\n  - { name: supply_high, C_J_K: 720.0 }\nconductances:\n  - { a: bed_low, b: low, W_K: 0.85 }\n  - { a: bed_low, b: frame_low, W_K: 0.22 }\n  - { a: frame_low, b: low, W_K: 2.7 }\n  - { a: spools_low, b: low, W_K: 1.1 }\n  - { a: supply_low, b: low, W_K: 0.75 }\n  - { a: bed_high, b: high, W_K: 1.05 }\n  - { a: bed_high, b: frame_high, W_K: 0.26 }\n  - { a: frame_high, b: high, W_K: 3.1 }\n  - { a: spools_high, b: high, W_K: 1.4 }\n  - { a: supply_high, b: high, W_K: 0.8 }\n  - { a: supply_low, b: floor_low.1, W_K: 0.2 }\n  - { a: supply_high, b: shelf.3, W_K: 0.2 }\nwalls:\n  - name: floor_low\n    a: low\n    b: room\n    area_m2: 0.36\n    h_a_W_m2K: 3.5\n    h_b_W_m2K: 2.0\n    layers:\n      - { thickness_m: 0.018, k_W_mK: 0.13, rho_kg_m3: 620.0, c_J_kgK: 1600.0, nodes: 3 }\n  - name: left_low\n    a: low\n    b: room\n    area_m2: 0.42\n    h_a_W_m2K: 4.5\n    h_b_W_m2K: 7.5\n    layers:\n      - { thickness_m: 0.018, k_W_mK: 0.13, rho_kg_m3: 620.0, c_J_kgK: 1600.0, nodes: 3 }\n  - name: right_low\n    a: low\n    b: room\n    area_m2: 0.42\n    h_a_W_m2K: 4.5\n    h_b_W_m2K: 7.5\n    layers:\n      - { thickness_m: 0.018, k_W_mK: 0.13, rho_kg_m3: 620.0, c_J_kgK: 1600.0, nodes: 3 }\n  - name: back_low\n    a: low\n    b: room\n    area_m2: 0.42\n    h_a_W_m2K: 4.5\n    h_b_W_m2K: 3.0\n    layers:\n      - { thickness_m: 0.018, k_W_mK: 0.13, rho_kg_m3: 620.0, c_J_kgK: 1600.0, nodes: 3 }\n  - name: door_low\n    a: low\n    b: room\n    area_m2: 0.4\n    h_a_W_m2K: 4.5\n    h_b_W_m2K: 7.5\n    layers:\n      - { thickness_m: 0.006, k_W_mK: 0.19, rho_kg_m3: 1190.0, c_J_kgK: 1470.0, nodes: 3 }\n  - name: shelf\n    a: low\n    b: high\n    area_m2: 0.34\n    h_a_W_m2K: 5.5\n    h_b_W_m2K: 4.0\n    layers:\n      - { thickness_m: 0.018, k_W_mK: 0.13, rho_kg_m3: 620.0, c_J_kgK: 1600.0, nodes: 3 }\n  - name: left_high\n    a: high\n    b: room\n    area_m2: 0.42\n    h_a_W_m2K: 4.5\n    h_b_W_m2K: 7.5\n    layers:\n      - { thickness_m: 0.018, k_W_mK: 0.13, rho_kg_m3: 620.0, c_J_kgK: 1600.0, nodes: 3 }\n  - name: right_high\n    a: high\n    b: room\n    area_m2: 0.42\n    h_a_W_m2K: 4.5\n    h_b_W_m2K: 7.5\n    layers:\n      - { thickness_m: 0.018, k_W_mK: 0.13, rho_kg_m3: 620.0, c_J_kgK: 1600.0, nodes: 3 }\n  - name: back_high\n    a: high\n    b: room\n    area_m2: 0.42\n    h_a_W_m2K: 4.5\n    h_b_W_m2K: 3.0\n    layers:\n      - { thickness_m: 0.018, k_W_mK: 0.13, rho_kg_m3: 620.0, c_J_kgK: 1600.0, nodes: 3 }\n  - name: door_high\n    a: high\n    b: room\n    area_m2: 0.4\n    h_a_W_m2K: 4.5\n    h_b_W_m2K: 7.5\n    layers:\n      - { thickness_m: 0.006, k_W_mK: 0.19, rho_kg_m3: 1190.0, c_J_kgK: 1470.0, nodes: 3 }\n  - name: top_high\n    a: high\n    b: room\n    area_m2: 0.36\n    h_a_W_m2K: 5.5\n    h_b_W_m2K: 7.5\n    layers:\n      - { thickness_m: 0.018, k_W_mK: 0.13, rho_kg_m3: 620.0, c_J_kgK: 1600.0, nodes: 3 }\nradiation:\n  - { a: bed_low, b: shelf.1, area_m2: 0.055, emissivity: 0.88, factor: 0.6 }\n  - { a: bed_low, b: left_low.1, area_m2: 0.055, emissivity: 0.88, factor: 0.12 }\n  - { a: bed_low, b: door_low.1, area_m2: 0.055, emissivity: 0.88, factor: 0.15 }\n  - { a: bed_high, b: top_high.1, area_m2: 0.066, emissivity: 0.88, factor: 0.55 }\n  - { a: bed_high, b: right_high.1, area_m2: 0.066, emissivity: 0.88, factor: 0.14 }\n  - { a: bed_high, b: door_high.1, area_m2: 0.066, emissivity: 0.88, factor: 0.16 }\n  - { a: frame_low, b: back_low.1, area_m2: 0.12, emissivity: 0.8, factor: 0.5 }\n  - { a: frame_high, b: back_high.1, area_m2: 0.14, emissivity: 0.8, factor: 0.5 }\npaths:\n  - {\n      name: intake,\n      type: orifice,\n      from: room,\n      to: low,\n      z_m: 0.12,\n      Cd: 0.61,\n      area_m2: 0.0048,\n      count: 1,\n      dp_lin_Pa: 0.005,\n    }\n  - {\n      name: shelf_hole,\n      type: orifice,\n      from: low,\n      to: high,\n      z_m: 0.8,\n      Cd: 0.61,\n      area_m2: 0.0045,\n      count: 2,\n      dp_lin_Pa: 0.005,\n    }\n  - { name: seal_low_1, type: crack, from: room, to: low, z_m: 0.15, c: 0.00042, n: 0.62, dp_lin_Pa: 0.005 }\n  - { name: seal_low_2, type: crack, from: room, to: low, z_m: 0.75, c: 0.00042, n: 0.62, dp_lin_Pa: 0.005 }\n  - { name: seal_high_1, type: crack, from: room, to: high, z_m: 0.87, c: 0.00042, n: 0.62, dp_lin_Pa: 0.005 }\n  - { name: seal_high_2, type: crack, from: room, to: high, z_m: 1.47, c: 0.00042, n: 0.62, dp_lin_Pa: 0.005 }\n  - name: exhaust\n    type: fan_path\n    from: high\n    to: room\n    z_m: 1.45\n    fan:\n      curve:\n        poly: { p0: 62.0, a: 900.0, b: 148000.0 }\n      control: { thermostat: fan }\n      stopped:\n        K:\n          - { K: 3.5, area_m2: 0.0079 }\n    filter: { a: 2100.0, b: 60000.0 }\n    resistance:\n      a_lin: 200.0\n      K:\n        - { K: 2.6, area_m2: 0.0079 }\n        - { K: 1.1, area_m2: 0.0113 }\n  - {\n      name: door_below_foot,\n      type: orifice,\n      from: room,\n      to: low,\n      z_m: 0.12,\n      Cd: 0.61,\n      area_m2: 0.12,\n      count: 1,\n      dp_lin_Pa: 0.005,\n      open: { windows: [[45000.0, 45180.0], [69300.0, 69420.0]] },\n    }\n  - {\n      name: door_above_foot,\n      type: orifice,\n      from: room,\n      to: high,\n      z_m: 0.87,\n      Cd: 0.61,\n      area_m2: 0.12,\n      count: 1,\n      dp_lin_Pa: 0.005,\n      open: { windows: [[38160.0, 38400.0]] },\n    }\nexchanges:\n  - {\n      name: door_below,\n      a: low,\n      b: room,\n      law: vertical_opening,\n      Cd: 0.6,\n      width_m: 0.56,\n      height_m: 0.64,\n      active: { windows: [[45000.0, 45180.0], [69300.0, 69420.0]] },\n    }\n  - {\n      name: door_above,\n      a: high,\n      b: room,\n      law: vertical_opening,\n      Cd: 0.6,\n      width_m: 0.56,\n      height_m: 0.64,\n      active: { windows: [[38160.0, 38400.0]] },\n    }\nmachines:\n  - name: below\n    bed: { node: bed_low, P_max_W: 320.0 }\n    modes:\n      technical:\n        bed_set_C: 100.0\n        powers: [{ node: frame_low, W: 28.0 }, { node: low, W: 16.0 }, { node: supply_low, W: 21.0 }]\n      easy:\n        bed_set_C: 60.0\n        powers: [{ node: frame_low, W: 24.0 }, { node: low, W: 11.0 }, { node: supply_low, W: 12.0 }]\n      idle:\n        powers: [{ node: supply_low, W: 4.0 }]\n  - name: above\n    bed: { node: bed_high, P_max_W: 400.0 }\n    modes:\n      technical:\n        bed_set_C: 105.0\n        powers: [{ node: frame_high, W: 33.0 }, { node: high, W: 19.0 }, { node: supply_high, W: 26.0 }]\n      easy:\n        bed_set_C: 65.0\n        powers: [{ node: frame_high, W: 29.0 }, { node: high, W: 13.0 }, { node: supply_high, W: 15.0 }]\n      idle:\n        powers: [{ node: supply_high, W: 5.0 }]\nschedule:\n  - { machine: below, mode: technical, start_s: 27000.0, end_s: 44100.0 }\n  - { machine: below, mode: easy, start_s: 48600.0, end_s: 68400.0 }\n  - { machine: above, mode: easy, start_s: 28800.0, end_s: 37800.0 }\n  - { machine: above, mode: technical, start_s: 39600.0, end_s: 74700.0 }\nthermostats:\n  - { name: fan, sensor: high, on_above_C: 34.0, off_below_C: 27.0, initial: \"off\" }\n",
  "answers": [
   {
    "id": "T_low@36000s",
    "value": 32.2183338,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "T_high@36000s",
    "value": 33.64552329,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "T_low@45180s",
    "value": 24.59662099,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "T_high@60000s",
    "value": 36.0264359,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "T_low@68400s",
    "value": 27.82774415,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "T_high@74700s",
    "value": 33.41690141,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "T_shelf.2@60000s",
    "value": 35.07330542,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "T_frame_high@86400s",
    "value": 24.60749476,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "bedpower_above@60000s",
    "value": 119.4153224,
    "unit": "W",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.05
   },
   {
    "id": "flow_exhaust@60000s",
    "value": 0.01157131868,
    "unit": "kg/s",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.0000116
   },
   {
    "id": "flow_intake@36000s",
    "value": 0.007602060876,
    "unit": "kg/s",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.0000152
   },
   {
    "id": "p_high@60000s",
    "value": -13.76714643,
    "unit": "Pa",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.01
   },
   {
    "id": "switch_1",
    "value": 31862.35026,
    "unit": "s",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 2
   },
   {
    "id": "switch_count",
    "value": 4,
    "unit": "1",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.5
   },
   {
    "id": "peak_low",
    "value": 39.80652767,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "peak_high",
    "value": 38.18552631,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "energy_bed_above",
    "value": 4818175.282,
    "unit": "J",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 4820
   },
   {
    "id": "energy_machine_below",
    "value": 4753184.122,
    "unit": "J",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 4750
   }
  ]
 },
 {
  "id": "01-one-zone-constant-power",
  "title": "One zone, one conductance, constant power",
  "yaml": "# 01-one-zone-constant-power: One zone, one conductance, constant power\n# Laws and key meanings: the laws in README.md beside this file. SI units; temperatures in degC; times in s.\nid: 01-one-zone-constant-power\ntitle: One zone, one conductance, constant power\nduration_s: 14400.0\ndensity: { model: ideal_gas }\nfan_density_scaling: false\nzones:\n  - { name: room, pressure: fixed, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed, p_ref_Pa: 0.0, T: fixed, T_C: 21.0 }\n  - {\n      name: bay,\n      pressure: fixed,\n      z_ref_m: 0.0,\n      volume_m3: 1.0,\n      conc: fixed,\n      p_ref_Pa: 0.0,\n      T: free,\n      T0_C: 21.0,\n      heat_capacity_J_K: 2500.0,\n    }\nconductances:\n  - { a: bay, b: room, W_K: 3.2 }\nheat_sources:\n  - { name: heater, node: bay, W: 55.0, active: always }\n",
  "answers": [
   {
    "id": "T_bay@600s",
    "value": 30.21353089,
    "unit": "C",
    "method": "closed form exponential",
    "tolerance": 0.01
   },
   {
    "id": "T_bay@1800s",
    "value": 36.47118015,
    "unit": "C",
    "method": "closed form exponential",
    "tolerance": 0.01
   },
   {
    "id": "T_bay@3600s",
    "value": 38.01611069,
    "unit": "C",
    "method": "closed form exponential",
    "tolerance": 0.01
   },
   {
    "id": "T_bay_steady",
    "value": 38.1875,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.005
   },
   {
    "id": "energy_source@3600s",
    "value": 198000,
    "unit": "J",
    "method": "closed form",
    "tolerance": 200
   }
  ]
 },
 {
  "id": "04a-stack-two-openings",
  "title": "Stack flow through two openings, bay held at 45 degC in a 21 degC room",
  "yaml": "# 04a-stack-two-openings: Stack flow through two openings, bay held at 45 degC in a 21 degC room\n# Laws and key meanings: the laws in README.md beside this file. SI units; temperatures in degC; times in s.\nid: 04a-stack-two-openings\ntitle: Stack flow through two openings, bay held at 45 degC in a 21 degC room\nduration_s: 0.0\ndensity: { model: ideal_gas }\nfan_density_scaling: false\nanalysis: network\nzones:\n  - { name: room, pressure: fixed, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed, p_ref_Pa: 0.0, T: fixed, T_C: 21.0 }\n  - { name: bay, pressure: solved, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed, T: fixed, T_C: 45.0 }\npaths:\n  - {\n      name: low,\n      type: orifice,\n      from: room,\n      to: bay,\n      z_m: 0.07,\n      Cd: 0.61,\n      area_m2: 0.0055,\n      count: 1,\n      dp_lin_Pa: 1.0e-05,\n    }\n  - {\n      name: high,\n      type: orifice,\n      from: bay,\n      to: room,\n      z_m: 0.97,\n      Cd: 0.61,\n      area_m2: 0.0055,\n      count: 1,\n      dp_lin_Pa: 1.0e-05,\n    }\n",
  "answers": [
   {
    "id": "flow_low",
    "value": 0.003220058133,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 0.00000966
   },
   {
    "id": "flow_high",
    "value": 0.003220058133,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 0.00000966
   },
   {
    "id": "neutral_level",
    "value": 0.5023615875,
    "unit": "m",
    "method": "closed form",
    "tolerance": 0.005
   },
   {
    "id": "dp_low",
    "value": 0.383821887,
    "unit": "Pa",
    "method": "closed form (room minus bay at z = 0.07 m)",
    "tolerance": 0.00115
   }
  ]
 },
 {
  "id": "06a-fan-filter-point",
  "title": "Fan, filter, duct and silencer box in series: operating point, polynomial curve",
  "yaml": "# 06a-fan-filter-point: Fan, filter, duct and silencer box in series: operating point, polynomial curve\n# Laws and key meanings: the laws in README.md beside this file. SI units; temperatures in degC; times in s.\nid: 06a-fan-filter-point\ntitle: \"Fan, filter, duct and silencer box in series: operating point, polynomial curve\"\nduration_s: 0.0\ndensity: { model: constant, value: 1.2 }\nfan_density_scaling: false\nanalysis: network\nzones:\n  - { name: bay, pressure: fixed, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed, p_ref_Pa: 0.0, T: fixed, T_C: 21.0 }\n  - { name: room, pressure: fixed, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed, p_ref_Pa: 0.0, T: fixed, T_C: 21.0 }\npaths:\n  - name: exhaust\n    type: fan_path\n    from: bay\n    to: room\n    z_m: 0.0\n    fan:\n      curve:\n        poly: { p0: 72.0, a: 1400.0, b: 175000.0 }\n      control: always\n      stopped:\n        K:\n          - { K: 3.5, area_m2: 0.00502655 }\n    filter: { a: 1500.0, b: 50000.0 }\n    resistance:\n      a_lin: 240.0\n      K:\n        - { name: duct bends+exit, K: 3.2, area_m2: 0.00502655 }\n        - { name: silencer box, K: 2.4, area_m2: 0.00502655 }\n",
  "answers": [
   {
    "id": "flow_exhaust",
    "value": 0.0125506454,
    "unit": "kg/s",
    "method": "closed form quadratic",
    "tolerance": 0.0000251
   },
   {
    "id": "volume_flow",
    "value": 37.65193621,
    "unit": "m3/h",
    "method": "closed form quadratic",
    "tolerance": 0.0753
   },
   {
    "id": "filter_dp",
    "value": 21.15770606,
    "unit": "Pa",
    "method": "closed form",
    "tolerance": 0.05
   },
   {
    "id": "silencer_dp",
    "value": 6.234363278,
    "unit": "Pa",
    "method": "closed form",
    "tolerance": 0.05
   }
  ]
 },
 {
  "id": "09a-bed-thermostat",
  "title": "Heated bed: full power to the set-point, hold, down to a lower set-point, hold, off",
  "yaml": "# 09a-bed-thermostat: Heated bed: full power to the set-point, hold, down to a lower set-point, hold, off\n# Laws and key meanings: the laws in README.md beside this file. SI units; temperatures in degC; times in s.\nid: 09a-bed-thermostat\ntitle: \"Heated bed: full power to the set-point, hold, down to a lower set-point, hold, off\"\nduration_s: 10800.0\ndensity: { model: ideal_gas }\nfan_density_scaling: false\nzones:\n  - { name: room, pressure: fixed, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed, p_ref_Pa: 0.0, T: fixed, T_C: 25.0 }\nnodes:\n  - { name: bed, C_J_K: 2200.0, T0_C: 25.0 }\nconductances:\n  - { a: bed, b: room, W_K: 1.46 }\nmachines:\n  - name: E\n    bed: { node: bed, P_max_W: 460.0 }\n    modes:\n      technical:\n        bed_set_C: 105.0\n        powers: []\n      easy:\n        bed_set_C: 65.0\n        powers: []\n      idle:\n        powers: []\nschedule:\n  - { machine: E, mode: technical, start_s: 600.0, end_s: 4200.0 }\n  - { machine: E, mode: easy, start_s: 4200.0, end_s: 8000.0 }\n",
  "answers": [
   {
    "id": "time_reach_105C",
    "value": 1041.375937,
    "unit": "s",
    "method": "closed form",
    "tolerance": 1
   },
   {
    "id": "time_down_to_65C",
    "value": 5244.468354,
    "unit": "s",
    "method": "closed form",
    "tolerance": 1
   },
   {
    "id": "T_bed@900s",
    "value": 81.87761616,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.02
   },
   {
    "id": "P_hold_105C",
    "value": 116.8,
    "unit": "W",
    "method": "closed form",
    "tolerance": 0.02
   },
   {
    "id": "P_hold_65C",
    "value": 58.4,
    "unit": "W",
    "method": "closed form",
    "tolerance": 0.02
   },
   {
    "id": "T_bed@9000s",
    "value": 45.59901153,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.02
   },
   {
    "id": "energy_bed",
    "value": 732883.2697,
    "unit": "J",
    "method": "closed form",
    "tolerance": 733
   }
  ]
 },
 {
  "id": "10a-thermostat-cycling",
  "title": "Fan thermostat with hysteresis: exact switching times",
  "yaml": "# 10a-thermostat-cycling: Fan thermostat with hysteresis: exact switching times\n# Laws and key meanings: the laws in README.md beside this file. SI units; temperatures in degC; times in s.\nid: 10a-thermostat-cycling\ntitle: \"Fan thermostat with hysteresis: exact switching times\"\nduration_s: 7200.0\ndensity: { model: ideal_gas }\nfan_density_scaling: false\nzones:\n  - { name: room, pressure: fixed, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed, p_ref_Pa: 0.0, T: fixed, T_C: 21.0 }\n  - {\n      name: bay,\n      pressure: fixed,\n      z_ref_m: 0.0,\n      volume_m3: 1.0,\n      conc: fixed,\n      p_ref_Pa: 0.0,\n      T: free,\n      T0_C: 21.0,\n      heat_capacity_J_K: 2500.0,\n    }\nconductances:\n  - { a: bay, b: room, W_K: 4.0 }\nheat_sources:\n  - { name: h, node: bay, W: 90.0, active: always }\npaths:\n  - name: in\n    type: fixed_flow\n    from: room\n    to: bay\n    kg_s: 0.008\n    open: { thermostat: fan }\n  - name: out\n    type: fixed_flow\n    from: bay\n    to: room\n    kg_s: 0.008\n    open: { thermostat: fan }\nthermostats:\n  - { name: fan, sensor: bay, on_above_C: 32.0, off_below_C: 30.0, initial: \"off\" }\n",
  "answers": [
   {
    "id": "switch_1",
    "value": 419.4801712,
    "unit": "s",
    "method": "closed form",
    "tolerance": 2
   },
   {
    "id": "switch_2",
    "value": 592.9683846,
    "unit": "s",
    "method": "closed form",
    "tolerance": 2
   },
   {
    "id": "switch_3",
    "value": 693.1825408,
    "unit": "s",
    "method": "closed form",
    "tolerance": 2
   },
   {
    "id": "switch_4",
    "value": 866.6707542,
    "unit": "s",
    "method": "closed form",
    "tolerance": 2
   },
   {
    "id": "switch_50",
    "value": 7161.825257,
    "unit": "s",
    "method": "closed form",
    "tolerance": 6
   },
   {
    "id": "switch_count",
    "value": 50,
    "unit": "1",
    "method": "closed form",
    "tolerance": 0.5
   },
   {
    "id": "duty",
    "value": 0.6338571843,
    "unit": "1",
    "method": "closed form",
    "tolerance": 0.002
   }
  ]
 },
 {
  "id": "12a-contaminants-room",
  "title": "West, loft and room in a row, known flows: filtered exhaust into the room",
  "yaml": "# 12a-contaminants-room: West, loft and room in a row, known flows: filtered exhaust into the room\n# Laws and key meanings: the laws in README.md beside this file. SI units; temperatures in degC; times in s.\nid: 12a-contaminants-room\ntitle: \"West, loft and room in a row, known flows: filtered exhaust into the room\"\nduration_s: 28800.0\ndensity: { model: ideal_gas }\nfan_density_scaling: false\nzones:\n  - { name: outdoor, pressure: fixed, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed, p_ref_Pa: 0.0, T: fixed, T_C: 8.0 }\n  - { name: room, pressure: fixed, z_ref_m: 0.0, volume_m3: 54.0, conc: free, p_ref_Pa: 0.0, T: fixed, T_C: 21.0 }\n  - { name: west, pressure: fixed, z_ref_m: 0.0, volume_m3: 0.2445, conc: free, p_ref_Pa: 0.0, T: fixed, T_C: 35.0 }\n  - { name: loft, pressure: fixed, z_ref_m: 0.0, volume_m3: 0.371, conc: free, p_ref_Pa: 0.0, T: fixed, T_C: 38.0 }\npaths:\n  - { name: in, type: fixed_flow, from: room, to: west, kg_s: 0.0102 }\n  - { name: deck, type: fixed_flow, from: west, to: loft, kg_s: 0.0102 }\n  - name: exhaust\n    type: fixed_flow\n    from: loft\n    to: room\n    kg_s: 0.0102\n    filter_eff: { pn: 0.93, voc: 0.48 }\ncontaminants:\n  - name: pn\n    unit: 1/m3\n    scale: 10000000000.0\n    initial: { outdoor: 5000000000.0, room: 3000000000.0, west: 3000000000.0, loft: 3000000000.0 }\n    deposition_per_h: { room: 0.35, west: 1.3, loft: 1.6 }\n  - name: voc\n    unit: ug/m3\n    scale: 10.0\n    initial: { outdoor: 4.0, room: 12.0, west: 12.0, loft: 12.0 }\nrecirculation:\n  - name: cleaner\n    zone: loft\n    m3_h: 18.0\n    eff: { pn: 0.88, voc: 0.3 }\n    active: always\nair_change:\n  - { zone: room, with: outdoor, per_h: 0.5 }\nemissions:\n  - { contaminant: pn, zone: west, rate: 2800000000.0, active: always }\n  - { contaminant: pn, zone: loft, rate: 1300000000.0, active: always }\n  - { contaminant: voc, zone: west, rate: 0.66, active: always }\n  - { contaminant: voc, zone: loft, rate: 0.34, active: always }\n",
  "answers": [
   {
    "id": "pn_room@600s",
    "value": 4457458066,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 22300000
   },
   {
    "id": "pn_west@600s",
    "value": 330368386300,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 1650000000
   },
   {
    "id": "pn_loft@600s",
    "value": 314395631800,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 1570000000
   },
   {
    "id": "pn_room@3600s",
    "value": 8728700319,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 43600000
   },
   {
    "id": "pn_west@3600s",
    "value": 334642721500,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 1670000000
   },
   {
    "id": "pn_loft@3600s",
    "value": 317207352600,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 1590000000
   },
   {
    "id": "pn_room@28800s",
    "value": 10682409160,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 53400000
   },
   {
    "id": "pn_west@28800s",
    "value": 336597845000,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 1680000000
   },
   {
    "id": "pn_loft@28800s",
    "value": 318493460300,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 1590000000
   },
   {
    "id": "pn_room_steady",
    "value": 10682524910,
    "unit": "1/m3",
    "method": "linear solve",
    "tolerance": 53400000
   },
   {
    "id": "pn_west_steady",
    "value": 336597960800,
    "unit": "1/m3",
    "method": "linear solve",
    "tolerance": 1680000000
   },
   {
    "id": "pn_loft_steady",
    "value": 318493536500,
    "unit": "1/m3",
    "method": "linear solve",
    "tolerance": 1590000000
   },
   {
    "id": "voc_room@600s",
    "value": 14.96527266,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.0748
   },
   {
    "id": "voc_west@600s",
    "value": 92.4582135,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.462
   },
   {
    "id": "voc_loft@600s",
    "value": 112.4190668,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.562
   },
   {
    "id": "voc_room@3600s",
    "value": 26.56732536,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.133
   },
   {
    "id": "voc_west@3600s",
    "value": 104.136073,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.521
   },
   {
    "id": "voc_loft@3600s",
    "value": 122.4290839,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.612
   },
   {
    "id": "voc_room@28800s",
    "value": 38.51201693,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.193
   },
   {
    "id": "voc_west@28800s",
    "value": 116.1588103,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.581
   },
   {
    "id": "voc_loft@28800s",
    "value": 132.7346953,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.664
   },
   {
    "id": "voc_room_steady",
    "value": 38.55264233,
    "unit": "ug/m3",
    "method": "linear solve",
    "tolerance": 0.193
   },
   {
    "id": "voc_west_steady",
    "value": 116.1997011,
    "unit": "ug/m3",
    "method": "linear solve",
    "tolerance": 0.581
   },
   {
    "id": "voc_loft_steady",
    "value": 132.769746,
    "unit": "ug/m3",
    "method": "linear solve",
    "tolerance": 0.664
   }
  ]
 },
 {
  "id": "13b-sealed-zone",
  "title": "A sealed bay (no air path at all) beside a vented one: the pressure matrix is singular, the answer is not",
  "yaml": "# 13b-sealed-zone: A sealed bay (no air path at all) beside a vented one: the pressure matrix is singular, the answer is not\n# Laws and key meanings: the laws in README.md beside this file. SI units; temperatures in degC; times in s.\nid: 13b-sealed-zone\ntitle: \"A sealed bay (no air path at all) beside a vented one: the pressure matrix is singular, the answer is not\"\nduration_s: 3600.0\ndensity: { model: ideal_gas }\nfan_density_scaling: false\nzones:\n  - { name: room, pressure: fixed, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed, p_ref_Pa: 0.0, T: fixed, T_C: 21.0 }\n  - {\n      name: sealed,\n      pressure: solved,\n      z_ref_m: 0.0,\n      volume_m3: 1.0,\n      conc: fixed,\n      T: free,\n      T0_C: 21.0,\n      heat_capacity_J_K: 2500.0,\n    }\n  - {\n      name: vented,\n      pressure: solved,\n      z_ref_m: 0.0,\n      volume_m3: 1.0,\n      conc: fixed,\n      T: free,\n      T0_C: 21.0,\n      heat_capacity_J_K: 2500.0,\n    }\nconductances:\n  - { a: sealed, b: room, W_K: 3.2 }\n  - { a: vented, b: room, W_K: 3.2 }\n  - { a: vented, b: sealed, W_K: 1.1 }\nheat_sources:\n  - { name: h, node: sealed, W: 55.0, active: always }\npaths:\n  - {\n      name: grille,\n      type: orifice,\n      from: room,\n      to: vented,\n      z_m: 0.3,\n      Cd: 0.61,\n      area_m2: 0.0055,\n      count: 1,\n      dp_lin_Pa: 0.002,\n    }\n",
  "answers": [
   {
    "id": "T_sealed@600s",
    "value": 29.30590195,
    "unit": "C",
    "method": "matrix exponential",
    "tolerance": 0.01
   },
   {
    "id": "T_vented@600s",
    "value": 21.90762893,
    "unit": "C",
    "method": "matrix exponential",
    "tolerance": 0.01
   },
   {
    "id": "T_sealed@3600s",
    "value": 34.59851064,
    "unit": "C",
    "method": "matrix exponential",
    "tolerance": 0.01
   },
   {
    "id": "T_vented@3600s",
    "value": 24.41760005,
    "unit": "C",
    "method": "matrix exponential",
    "tolerance": 0.01
   },
   {
    "id": "flow_grille",
    "value": 0,
    "unit": "kg/s",
    "method": "one opening only: no net flow",
    "tolerance": 1e-9
   }
  ]
 },
 {
  "id": "15a-fan-with-dip",
  "title": "Fan curve with a stall dip, system curve AQ + BQ2 against 25.0 Pa back pressure: every crossing",
  "yaml": "# 15a-fan-with-dip: Fan curve with a stall dip, system curve AQ + BQ2 against 25.0 Pa back pressure: every crossing\n# Laws and key meanings: the laws in README.md beside this file. SI units; temperatures in degC; times in s.\nid: 15a-fan-with-dip\ntitle: \"Fan curve with a stall dip, system curve AQ + BQ2 against 25.0 Pa back pressure: every crossing\"\nduration_s: 0.0\ndensity: { model: constant, value: 1.2 }\nfan_density_scaling: false\nanalysis: operating_points\nzones:\n  - { name: bay, pressure: fixed, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed, p_ref_Pa: 0.0, T: fixed, T_C: 21.0 }\n  - { name: room, pressure: fixed, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed, p_ref_Pa: 25.0, T: fixed, T_C: 21.0 }\npaths:\n  - name: exhaust\n    type: fan_path\n    from: bay\n    to: room\n    z_m: 0.0\n    fan:\n      curve:\n        points:\n          - [0.0, 60.0]\n          - [0.002, 46.0]\n          - [0.003, 30.0]\n          - [0.004, 36.0]\n          - [0.005, 42.0]\n          - [0.006, 39.0]\n          - [0.008, 24.0]\n          - [0.0105, 0.0]\n      control: always\n      stopped:\n        K: []\n    resistance:\n      a_lin: 2500.0\n      b_quad: 100000.0\n      K: []\n",
  "answers": [
   {
    "id": "count",
    "value": 3,
    "unit": "1",
    "method": "closed form per segment vs scan of 2 million points",
    "tolerance": 0.4
   },
   {
    "id": "Q_1_stable",
    "value": 10.15856393,
    "unit": "m3/h",
    "method": "closed form",
    "tolerance": 0.02
   },
   {
    "id": "Q_2_unstable",
    "value": 15.20669503,
    "unit": "m3/h",
    "method": "closed form",
    "tolerance": 0.02
   },
   {
    "id": "Q_3_stable",
    "value": 19.10249786,
    "unit": "m3/h",
    "method": "closed form",
    "tolerance": 0.02
   }
  ]
 },
 {
  "id": "20-wall-two-layers",
  "title": "A wall of plywood and foam between a warm bay and a room",
  "yaml": "# Two fixed airs and a wall of two boards: matrix exponential of its five nodes.\nid: 20-wall-two-layers\ntitle: A wall of plywood and foam between a warm bay and a room\nduration_s: 7200.0\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: fixed, T_C: 45.0, pressure: fixed }\nwalls:\n  - name: w\n    a: bay\n    b: room\n    area_m2: 0.9\n    h_a_W_m2K: 8.0\n    h_b_W_m2K: 6.5\n    T0_C: 21.0\n    layers:\n      - { thickness_m: 0.018, k_W_mK: 0.13, rho_kg_m3: 500.0, c_J_kgK: 1600.0, nodes: 3 }\n      - { thickness_m: 0.02, k_W_mK: 0.035, rho_kg_m3: 30.0, c_J_kgK: 1450.0, nodes: 2 }\n_ask:\n  - { id: T_w.1@600s, unit: C, tolerance: 0.01 }\n  - { id: T_w.3@600s, unit: C, tolerance: 0.01 }\n  - { id: T_w.5@600s, unit: C, tolerance: 0.01 }\n  - { id: T_w.1@7200s, unit: C, tolerance: 0.01 }\n  - { id: T_w.5@7200s, unit: C, tolerance: 0.01 }\n",
  "answers": [
   {
    "id": "T_w.1@600s",
    "value": 29.10272311,
    "unit": "C",
    "method": "matrix exponential",
    "tolerance": 0.01
   },
   {
    "id": "T_w.3@600s",
    "value": 23.84389003,
    "unit": "C",
    "method": "matrix exponential",
    "tolerance": 0.01
   },
   {
    "id": "T_w.5@600s",
    "value": 21.7740247,
    "unit": "C",
    "method": "matrix exponential",
    "tolerance": 0.01
   },
   {
    "id": "T_w.1@7200s",
    "value": 40.93901424,
    "unit": "C",
    "method": "matrix exponential",
    "tolerance": 0.01
   },
   {
    "id": "T_w.5@7200s",
    "value": 27.94999348,
    "unit": "C",
    "method": "matrix exponential",
    "tolerance": 0.01
   }
  ]
 },
 {
  "id": "21-slab-symmetric-cooling",
  "title": "A board of 18 mm plywood at 100 degC put between airs of 0 degC",
  "yaml": "# The exact answer is the Fourier series of a slab with films (Biot number 0.533); 61 slices come within the band.\nid: 21-slab-symmetric-cooling\ntitle: A board of 18 mm plywood at 100 degC put between airs of 0 degC\nduration_s: 3600.0\ndensity: { model: constant, value: 1.2 }\nzones:\n  - { name: left, T: fixed, T_C: 0.0, pressure: fixed }\n  - { name: right, T: fixed, T_C: 0.0, pressure: fixed }\nwalls:\n  - name: board\n    a: left\n    b: right\n    area_m2: 1.0\n    h_a_W_m2K: 7.6923076923\n    h_b_W_m2K: 7.6923076923\n    T0_C: 100.0\n    layers:\n      - { thickness_m: 0.018, k_W_mK: 0.13, rho_kg_m3: 500.0, c_J_kgK: 1600.0, nodes: 61 }\n_ask:\n  - { id: T_board.31@300s, unit: C, tolerance: 0.02 }\n  - { id: T_board.31@900s, unit: C, tolerance: 0.02 }\n  - { id: T_board.31@1800s, unit: C, tolerance: 0.02 }\n  - { id: T_board.31@3600s, unit: C, tolerance: 0.02 }\n",
  "answers": [
   {
    "id": "T_board.31@300s",
    "value": 81.88977428,
    "unit": "C",
    "method": "Fourier series of the slab with films",
    "tolerance": 0.02
   },
   {
    "id": "T_board.31@900s",
    "value": 47.64158076,
    "unit": "C",
    "method": "Fourier series of the slab with films",
    "tolerance": 0.02
   },
   {
    "id": "T_board.31@1800s",
    "value": 21.13572787,
    "unit": "C",
    "method": "Fourier series of the slab with films",
    "tolerance": 0.02
   },
   {
    "id": "T_board.31@3600s",
    "value": 4.159865597,
    "unit": "C",
    "method": "Fourier series of the slab with films",
    "tolerance": 0.02
   }
  ]
 },
 {
  "id": "22-radiation-to-cold",
  "title": "A node that radiates to a place at absolute zero",
  "yaml": "# T = (T0^-3 + 3 k t)^(-1/3), k = area emissivity factor sigma / C.\nid: 22-radiation-to-cold\ntitle: A node that radiates to a place at absolute zero\nduration_s: 3600.0\ndensity: { model: constant, value: 1.2 }\nzones:\n  - { name: cold, T: fixed, T_C: -273.15, pressure: fixed }\nnodes:\n  - { name: plate, C_J_K: 800.0, T0_C: 110.0 }\nradiation:\n  - { a: plate, b: cold, area_m2: 0.055, emissivity: 0.9, factor: 0.8 }\n_ask:\n  - { id: T_plate@600s, unit: C, tolerance: 0.01 }\n  - { id: T_plate@3600s, unit: C, tolerance: 0.01 }\n",
  "answers": [
   {
    "id": "T_plate@600s",
    "value": 79.3507273,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "T_plate@3600s",
    "value": 1.834543563,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   }
  ]
 },
 {
  "id": "23-radiation-to-room",
  "title": "A bed of 110 degC that cools by radiation to walls of 21 degC",
  "yaml": "# Closed form: t(T) from partial fractions of 1/(T^4 - Ts^4), turned round by bracketing.\nid: 23-radiation-to-room\ntitle: A bed of 110 degC that cools by radiation to walls of 21 degC\nduration_s: 3600.0\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\nnodes:\n  - { name: bed, C_J_K: 520.0, T0_C: 110.0 }\nradiation:\n  - { a: bed, b: room, area_m2: 0.0552, emissivity: 0.9, factor: 1.0 }\n_ask:\n  - { id: T_bed@300s, unit: C, tolerance: 0.01 }\n  - { id: T_bed@1200s, unit: C, tolerance: 0.01 }\n  - { id: T_bed@3600s, unit: C, tolerance: 0.01 }\n",
  "answers": [
   {
    "id": "T_bed@300s",
    "value": 90.68308515,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "T_bed@1200s",
    "value": 57.68562678,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "T_bed@3600s",
    "value": 29.53343957,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   }
  ]
 },
 {
  "id": "24-cracks-in-series",
  "title": "Two cracks in series under 10 Pa",
  "yaml": "# Two cracks of one exponent in series act as one: c = (c1^(-1/n) + c2^(-1/n))^(-n).\nid: 24-cracks-in-series\ntitle: Two cracks in series under 10 Pa\nanalysis: network\ndensity: { model: constant, value: 1.2 }\nzones:\n  - { name: high, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 10.0 }\n  - { name: between, T: fixed, T_C: 21.0, pressure: solved }\n  - { name: low, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0 }\npaths:\n  - { name: first, type: crack, from: high, to: between, z_m: 0.0, c_m3_s: 0.0008, n: 0.65, dp_lin_Pa: 1.0e-04 }\n  - { name: second, type: crack, from: between, to: low, z_m: 0.0, c_m3_s: 0.0013, n: 0.65, dp_lin_Pa: 1.0e-04 }\n_ask:\n  - { id: flow_first, unit: kg/s, relative: 1.0e-04 }\n  - { id: flow_second, unit: kg/s, relative: 1.0e-04 }\n  - { id: p_between, unit: Pa, tolerance: 0.002 }\n",
  "answers": [
   {
    "id": "flow_first",
    "value": 0.003332598604,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 3.33e-7
   },
   {
    "id": "flow_second",
    "value": 0.003332598604,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 3.33e-7
   },
   {
    "id": "p_between",
    "value": 3.214894934,
    "unit": "Pa",
    "method": "closed form",
    "tolerance": 0.002
   }
  ]
 },
 {
  "id": "25-crack-law",
  "title": "Cracks at four pressures",
  "yaml": "# The law itself at pressures below, at and above its linear part, and backwards.\nid: 25-crack-law\ntitle: Cracks at four pressures\nanalysis: network\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0 }\n  - { name: a, T: fixed, T_C: 40.0, pressure: fixed, p_ref_Pa: 0.0005 }\n  - { name: b, T: fixed, T_C: 40.0, pressure: fixed, p_ref_Pa: 0.002 }\n  - { name: c, T: fixed, T_C: 40.0, pressure: fixed, p_ref_Pa: 5.0 }\n  - { name: d, T: fixed, T_C: 40.0, pressure: fixed, p_ref_Pa: -5.0 }\npaths:\n  - { name: a, type: crack, from: a, to: room, z_m: 0.0, c_m3_s: 0.001, n: 0.65, dp_lin_Pa: 0.002 }\n  - { name: b, type: crack, from: b, to: room, z_m: 0.0, c_m3_s: 0.001, n: 0.65, dp_lin_Pa: 0.002 }\n  - { name: c, type: crack, from: c, to: room, z_m: 0.0, c_m3_s: 0.001, n: 0.65, dp_lin_Pa: 0.002 }\n  - { name: d, type: crack, from: d, to: room, z_m: 0.0, c_m3_s: 0.001, n: 0.65, dp_lin_Pa: 0.002 }\n_ask:\n  - { id: flow_a, unit: kg/s, relative: 1.0e-06 }\n  - { id: flow_b, unit: kg/s, relative: 1.0e-06 }\n  - { id: flow_c, unit: kg/s, relative: 1.0e-06 }\n  - { id: flow_d, unit: kg/s, relative: 1.0e-06 }\n",
  "answers": [
   {
    "id": "flow_a",
    "value": 0.000004909090314,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 4.91e-12
   },
   {
    "id": "flow_b",
    "value": 0.00001757876371,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 1.76e-11
   },
   {
    "id": "flow_c",
    "value": 0.003208703375,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 3.21e-9
   },
   {
    "id": "flow_d",
    "value": -0.003415962815,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 3.42e-9
   }
  ]
 },
 {
  "id": "26-orifices-series-parallel",
  "title": "Two orifices side by side and one behind them, under 4 Pa",
  "yaml": "# Areas side by side add up; one behind the other 1/A^2 add up.\nid: 26-orifices-series-parallel\ntitle: Two orifices side by side and one behind them, under 4 Pa\nanalysis: network\ndensity: { model: constant, value: 1.2 }\nzones:\n  - { name: out, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 4.0 }\n  - { name: bay, T: fixed, T_C: 21.0, pressure: solved }\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0 }\npaths:\n  - { name: one, type: orifice, from: out, to: bay, z_m: 0.2, Cd: 0.61, area_m2: 0.002, count: 1, dp_lin_Pa: 1.0e-05 }\n  - {\n      name: many,\n      type: orifice,\n      from: out,\n      to: bay,\n      z_m: 1.2,\n      Cd: 0.61,\n      area_m2: 0.0001,\n      count: 12,\n      dp_lin_Pa: 1.0e-05,\n    }\n  - {\n      name: outlet,\n      type: orifice,\n      from: bay,\n      to: room,\n      z_m: 0.7,\n      Cd: 0.65,\n      area_m2: 0.004,\n      count: 1,\n      dp_lin_Pa: 1.0e-05,\n    }\n_ask:\n  - { id: flow_one, unit: kg/s, relative: 1.0e-04 }\n  - { id: flow_many, unit: kg/s, relative: 1.0e-04 }\n  - { id: flow_outlet, unit: kg/s, relative: 1.0e-04 }\n  - { id: p_bay, unit: Pa, tolerance: 0.001 }\n",
  "answers": [
   {
    "id": "flow_one",
    "value": 0.00302290888,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 3.02e-7
   },
   {
    "id": "flow_many",
    "value": 0.001813745328,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 1.81e-7
   },
   {
    "id": "flow_outlet",
    "value": 0.004836654207,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 4.84e-7
   },
   {
    "id": "p_bay",
    "value": 1.441890035,
    "unit": "Pa",
    "method": "closed form",
    "tolerance": 0.001
   }
  ]
 },
 {
  "id": "27-fans-in-series",
  "title": "Two different fans in series before a filter",
  "yaml": "# Two fans push through one filter: their pressures add up at one flow, a quadratic.\nid: 27-fans-in-series\ntitle: Two different fans in series before a filter\nanalysis: network\ndensity: { model: constant, value: 1.2 }\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: -2.0 }\npaths:\n  - name: exhaust\n    type: fan_path\n    from: bay\n    to: room\n    z_m: 0.0\n    fan:\n      - { name: inner, curve: { poly: { p0: 30.0, a: 500.0, b: 90000.0 } }, control: always }\n      - { name: outer, curve: { poly: { p0: 45.0, a: 300.0, b: 120000.0 } }, control: always }\n    filter: { a: 1800.0, b: 30000.0 }\n    resistance: { b_quad: 15000.0, K: [{ name: exit, K: 1.0, area_m2: 0.005 }] }\n_ask:\n  - { id: flow_exhaust, unit: kg/s, relative: 1.0e-05 }\n  - { id: part_exhaust/filter, unit: Pa, relative: 1.0e-05 }\n  - { id: part_exhaust/b_quad, unit: Pa, relative: 1.0e-05 }\n  - { id: part_exhaust/exit, unit: Pa, relative: 1.0e-05 }\n",
  "answers": [
   {
    "id": "flow_exhaust",
    "value": 0.01460855075,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 1.46e-7
   },
   {
    "id": "part_exhaust/filter",
    "value": 26.35886269,
    "unit": "Pa",
    "method": "closed form",
    "tolerance": 0.000264
   },
   {
    "id": "part_exhaust/b_quad",
    "value": 2.223018282,
    "unit": "Pa",
    "method": "closed form",
    "tolerance": 0.0000222
   },
   {
    "id": "part_exhaust/exit",
    "value": 3.556829251,
    "unit": "Pa",
    "method": "closed form",
    "tolerance": 0.0000356
   }
  ]
 },
 {
  "id": "28-fans-in-parallel",
  "title": "Two fan paths out of one bay, one inlet and a leak",
  "yaml": "id: 28-fans-in-parallel\ntitle: Two fan paths out of one bay, one inlet and a leak\nanalysis: network\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: fixed, T_C: 38.0, pressure: solved, z_ref_m: 0.5 }\npaths:\n  - { name: inlet, type: orifice, from: room, to: bay, z_m: 0.1, Cd: 0.61, area_m2: 0.0025, count: 1, dp_lin_Pa: 0.001 }\n  - { name: leak, type: crack, from: room, to: bay, z_m: 0.6, c_m3_s: 0.0004, n: 0.65, dp_lin_Pa: 0.001 }\n  - name: strong\n    type: fan_path\n    from: bay\n    to: room\n    z_m: 1.0\n    fan: { curve: { poly: { p0: 60.0, a: 800.0, b: 150000.0 } }, control: always }\n    filter: { a: 2500.0, b: 60000.0 }\n  - name: weak\n    type: fan_path\n    from: bay\n    to: room\n    z_m: 0.9\n    fan:\n      curve:\n        points:\n          - [0.0, 25.0]\n          - [0.004, 18.0]\n          - [0.009, 8.0]\n          - [0.012, 0.0]\n      control: always\n    resistance: { a_lin: 100.0, K: [{ K: 1.5, area_m2: 0.003 }] }\n_ask:\n  - { id: flow_inlet, unit: kg/s, relative: 1.0e-05 }\n  - { id: flow_leak, unit: kg/s, relative: 1.0e-05 }\n  - { id: flow_strong, unit: kg/s, relative: 1.0e-05 }\n  - { id: flow_weak, unit: kg/s, relative: 1.0e-05 }\n  - { id: p_bay, unit: Pa, tolerance: 0.001 }\n",
  "answers": [
   {
    "id": "flow_inlet",
    "value": 0.01011214166,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 1.01e-7
   },
   {
    "id": "flow_leak",
    "value": 0.003141609411,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 3.14e-8
   },
   {
    "id": "flow_strong",
    "value": 0.009482837195,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 9.48e-8
   },
   {
    "id": "flow_weak",
    "value": 0.003770913877,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 3.77e-8
   },
   {
    "id": "p_bay",
    "value": -23.94718417,
    "unit": "Pa",
    "method": "SciPy: brentq and Newton",
    "tolerance": 0.001
   }
  ]
 },
 {
  "id": "29-fan-density-scaling",
  "title": "A fan draws air of 60 degC through a filter, pressure scaled by density",
  "yaml": "# Hot air in a fan: its pressure falls with the density, so does the quadratic loss; the filter's does not.\nid: 29-fan-density-scaling\ntitle: A fan draws air of 60 degC through a filter, pressure scaled by density\nanalysis: network\nfan_density_scaling: true\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: fixed, T_C: 60.0, pressure: fixed, p_ref_Pa: 0.0 }\npaths:\n  - name: exhaust\n    type: fan_path\n    from: bay\n    to: room\n    z_m: 0.0\n    fan: { curve: { poly: { p0: 72.0, a: 1400.0, b: 175000.0 } }, control: always }\n    filter: { a: 1500.0, b: 50000.0 }\n    resistance: { a_lin: 240.0, K: [{ K: 5.6, area_m2: 0.005 }] }\n_ask:\n  - { id: flow_exhaust, unit: kg/s, relative: 1.0e-05 }\n",
  "answers": [
   {
    "id": "flow_exhaust",
    "value": 0.01076186358,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 1.08e-7
   }
  ]
 },
 {
  "id": "30-stopped-fan-back-flow",
  "title": "Back flow through a stopped fan and its filter",
  "yaml": "# The fan is off and the room stands above the bay: air comes back through filter and rotor. A quadratic.\nid: 30-stopped-fan-back-flow\ntitle: Back flow through a stopped fan and its filter\nanalysis: network\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: fixed, T_C: 35.0, pressure: fixed, p_ref_Pa: -6.0 }\npaths:\n  - name: exhaust\n    type: fan_path\n    from: bay\n    to: room\n    z_m: 0.0\n    fan:\n      curve: { poly: { p0: 72.0, a: 1400.0, b: 175000.0 } }\n      control: never\n      stopped: { a_lin: 30.0, K: [{ K: 3.5, area_m2: 0.005 }] }\n    filter: { a: 1500.0, b: 50000.0 }\n    resistance: { a_lin: 240.0, K: [{ K: 2.0, area_m2: 0.004 }] }\n_ask:\n  - { id: flow_exhaust, unit: kg/s, relative: 1.0e-05 }\n  - { id: part_exhaust/filter, unit: Pa, relative: 1.0e-05 }\n",
  "answers": [
   {
    "id": "flow_exhaust",
    "value": -0.003113772654,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 3.11e-8
   },
   {
    "id": "part_exhaust/filter",
    "value": -4.228853212,
    "unit": "Pa",
    "method": "closed form",
    "tolerance": 0.0000423
   }
  ]
 },
 {
  "id": "31-overwhelmed-fan",
  "title": "A running fan against more pressure than it can make",
  "yaml": "# The pressure against the fan is above its shut-off pressure: the air runs backwards through a running fan.\nid: 31-overwhelmed-fan\ntitle: A running fan against more pressure than it can make\nanalysis: network\ndensity: { model: constant, value: 1.15 }\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: -40.0 }\npaths:\n  - name: exhaust\n    type: fan_path\n    from: bay\n    to: room\n    z_m: 0.0\n    fan: { curve: { poly: { p0: 25.0, a: 900.0, b: 80000.0 } }, control: always }\n    filter: { a: 1500.0, b: 50000.0 }\n_ask:\n  - { id: flow_exhaust, unit: kg/s, relative: 1.0e-05 }\n",
  "answers": [
   {
    "id": "flow_exhaust",
    "value": -0.00567211195,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 5.67e-8
   }
  ]
 },
 {
  "id": "32-thermostat-lagged-sensor",
  "title": "A fan thermostat whose sensor lags by a minute and reads half a kelvin low",
  "yaml": "id: 32-thermostat-lagged-sensor\ntitle: A fan thermostat whose sensor lags by a minute and reads half a kelvin low\nduration_s: 5400.0\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: free, T0_C: 21.0, heat_capacity_J_K: 2500.0, pressure: fixed }\nnodes:\n  - { name: frame, C_J_K: 4000.0, T0_C: 21.0 }\nconductances:\n  - { a: bay, b: room, W_K: 4.0 }\n  - { a: frame, b: bay, W_K: 3.0 }\nheat_sources:\n  - { name: h, node: frame, W: 90.0 }\npaths:\n  - { name: in, type: fixed_flow, from: room, to: bay, kg_s: 0.008, open: { thermostat: fan } }\n  - { name: out, type: fixed_flow, from: bay, to: room, kg_s: 0.008, open: { thermostat: fan } }\nsensors:\n  - { name: probe, at: bay, lag_s: 60.0, offset_K: -0.5 }\nthermostats:\n  - { name: fan, sensor: probe, on_above_C: 32.0, off_below_C: 30.0, initial: \"off\" }\n_ask:\n  - { id: switch_1, unit: s, tolerance: 2.0 }\n  - { id: switch_2, unit: s, tolerance: 2.0 }\n  - { id: switch_9, unit: s, tolerance: 4.0 }\n  - { id: switch_10, unit: s, tolerance: 4.0 }\n  - { id: switch_count, unit: \"1\", tolerance: 0.5 }\n  - { id: runtime_fan, unit: s, tolerance: 10.0 }\n  - { id: peak_bay, unit: C, tolerance: 0.02 }\n  - { id: T_frame@5400s, unit: C, tolerance: 0.05 }\n",
  "answers": [
   {
    "id": "switch_1",
    "value": 2287.207401,
    "unit": "s",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 2
   },
   {
    "id": "switch_2",
    "value": 2434.51931,
    "unit": "s",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 2
   },
   {
    "id": "switch_9",
    "value": 4085.864788,
    "unit": "s",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 4
   },
   {
    "id": "switch_10",
    "value": 4301.103293,
    "unit": "s",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 4
   },
   {
    "id": "switch_count",
    "value": 15,
    "unit": "1",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.5
   },
   {
    "id": "runtime_fan",
    "value": 1406.725989,
    "unit": "s",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 10
   },
   {
    "id": "peak_bay",
    "value": 33.34334527,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "T_frame@5400s",
    "value": 60.57885956,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.05
   }
  ]
 },
 {
  "id": "33-thermostat-starts-on",
  "title": "A thermostat that finds the bay too warm at the start",
  "yaml": "# It starts above its level: on at once; the air cools exponentially until it switches off and never comes back.\nid: 33-thermostat-starts-on\ntitle: A thermostat that finds the bay too warm at the start\nduration_s: 1800.0\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: free, T0_C: 50.0, heat_capacity_J_K: 3000.0, pressure: fixed }\nconductances:\n  - { a: bay, b: room, W_K: 3.0 }\npaths:\n  - { name: in, type: fixed_flow, from: room, to: bay, kg_s: 0.01, open: { thermostat: fan } }\n  - { name: out, type: fixed_flow, from: bay, to: room, kg_s: 0.01, open: { thermostat: fan } }\nthermostats:\n  - { name: fan, sensor: bay, on_above_C: 32.0, off_below_C: 30.0, initial: \"off\" }\n_ask:\n  - { id: switch_1, unit: s, tolerance: 0.001 }\n  - { id: switch_2, unit: s, tolerance: 0.5 }\n  - { id: switch_count, unit: \"1\", tolerance: 0.5 }\n  - { id: T_bay@1800s, unit: C, tolerance: 0.01 }\n  - { id: runtime_fan, unit: s, tolerance: 0.5 }\n  - { id: peak_bay, unit: C, tolerance: 0.001 }\n  - { id: peaktime_bay, unit: s, tolerance: 0.001 }\n",
  "answers": [
   {
    "id": "switch_1",
    "value": 0,
    "unit": "s",
    "method": "closed form",
    "tolerance": 0.001
   },
   {
    "id": "switch_2",
    "value": 268.7759386,
    "unit": "s",
    "method": "closed form",
    "tolerance": 0.5
   },
   {
    "id": "switch_count",
    "value": 2,
    "unit": "1",
    "method": "closed form",
    "tolerance": 0.5
   },
   {
    "id": "T_bay@1800s",
    "value": 22.94643699,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "runtime_fan",
    "value": 268.7759386,
    "unit": "s",
    "method": "closed form",
    "tolerance": 0.5
   },
   {
    "id": "peak_bay",
    "value": 50,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.001
   },
   {
    "id": "peaktime_bay",
    "value": 0,
    "unit": "s",
    "method": "closed form",
    "tolerance": 0.001
   }
  ]
 },
 {
  "id": "34-bed-too-weak",
  "title": "A bed without the power to reach its set-point",
  "yaml": "# The bed never reaches its set-point: full power to the end of the job.\nid: 34-bed-too-weak\ntitle: A bed without the power to reach its set-point\nduration_s: 7200.0\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\nnodes:\n  - { name: bed, C_J_K: 900.0, T0_C: 21.0 }\nconductances:\n  - { a: bed, b: room, W_K: 1.3 }\nmachines:\n  - name: E\n    bed: { node: bed, P_max_W: 100.0 }\n    modes:\n      hot: { bed_set_C: 105.0 }\nschedule:\n  - { machine: E, mode: hot, start_s: 300.0, end_s: 5000.0 }\n_ask:\n  - { id: T_bed@1200s, unit: C, tolerance: 0.01 }\n  - { id: T_bed@5000s, unit: C, tolerance: 0.01 }\n  - { id: T_bed@7200s, unit: C, tolerance: 0.01 }\n  - { id: bedpower_E@4000s, unit: W, tolerance: 0.001 }\n  - { id: bedpower_E@6000s, unit: W, tolerance: 0.001 }\n  - { id: energy_bed_E, unit: J, tolerance: 5.0 }\n",
  "answers": [
   {
    "id": "T_bed@1200s",
    "value": 76.95909284,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "T_bed@5000s",
    "value": 97.83644466,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "T_bed@7200s",
    "value": 24.20240244,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "bedpower_E@4000s",
    "value": 100,
    "unit": "W",
    "method": "closed form",
    "tolerance": 0.001
   },
   {
    "id": "bedpower_E@6000s",
    "value": 0,
    "unit": "W",
    "method": "closed form",
    "tolerance": 0.001
   },
   {
    "id": "energy_bed_E",
    "value": 470000,
    "unit": "J",
    "method": "closed form",
    "tolerance": 5
   }
  ]
 },
 {
  "id": "35-bed-loses-its-hold",
  "title": "A bed that an open door cools below its set-point for a while",
  "yaml": "# While the door is open the hold needs more than full power: the bed sinks, then comes back and holds again.\nid: 35-bed-loses-its-hold\ntitle: A bed that an open door cools below its set-point for a while\nduration_s: 9000.0\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: free, T0_C: 21.0, heat_capacity_J_K: 2000.0, pressure: fixed }\nnodes:\n  - { name: bed, C_J_K: 700.0, T0_C: 21.0 }\nconductances:\n  - { a: bed, b: bay, W_K: 1.6 }\n  - { a: bay, b: room, W_K: 3.5 }\nexchanges:\n  - { a: bay, b: room, m3_s: 0.02, active: { windows: [[5000.0, 6200.0]] } }\nmachines:\n  - name: E\n    bed: { node: bed, P_max_W: 115.0 }\n    modes:\n      hot: { bed_set_C: 100.0, powers: [{ node: bay, W: 20.0 }] }\nschedule:\n  - { machine: E, mode: hot, start_s: 0.0, end_s: 8600.0 }\n_ask:\n  - { id: holding_E_1, unit: s, tolerance: 1.0 }\n  - { id: holding_E_2, unit: s, tolerance: 1.0 }\n  - { id: T_bed@6200s, unit: C, tolerance: 0.02 }\n  - { id: T_bay@6200s, unit: C, tolerance: 0.02 }\n  - { id: T_bay@4900s, unit: C, tolerance: 0.02 }\n  - { id: bedpower_E@4900s, unit: W, tolerance: 0.03 }\n  - { id: bedpower_E@6000s, unit: W, tolerance: 0.001 }\n  - { id: energy_bed_E, unit: J, tolerance: 400.0 }\n  - { id: energy_machine_E, unit: J, tolerance: 400.0 }\n",
  "answers": [
   {
    "id": "holding_E_1",
    "value": 1034.688406,
    "unit": "s",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 1
   },
   {
    "id": "holding_E_2",
    "value": 6404.325568,
    "unit": "s",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 1
   },
   {
    "id": "T_bed@6200s",
    "value": 98.04496699,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "T_bay@6200s",
    "value": 25.90187748,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "T_bay@4900s",
    "value": 49.70553685,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "bedpower_E@4900s",
    "value": 80.47114105,
    "unit": "W",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.03
   },
   {
    "id": "bedpower_E@6000s",
    "value": 115,
    "unit": "W",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.001
   },
   {
    "id": "energy_bed_E",
    "value": 787531.5273,
    "unit": "J",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 400
   },
   {
    "id": "energy_machine_E",
    "value": 959531.5273,
    "unit": "J",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 400
   }
  ]
 },
 {
  "id": "36-bed-and-bay",
  "title": "Two machines, beds in one bay: power falls as the bay warms",
  "yaml": "id: 36-bed-and-bay\ntitle: \"Two machines, beds in one bay: power falls as the bay warms\"\nduration_s: 14400.0\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: free, T0_C: 21.0, heat_capacity_J_K: 3200.0, pressure: solved }\nnodes:\n  - { name: bed A, C_J_K: 520.0, T0_C: 21.0 }\n  - { name: bed B, C_J_K: 820.0, T0_C: 21.0 }\n  - { name: frames, C_J_K: 9000.0, T0_C: 21.0 }\nconductances:\n  - { a: bed A, b: bay, W_K: 0.75 }\n  - { a: bed B, b: bay, W_K: 0.95 }\n  - { a: frames, b: bay, W_K: 6.0 }\nradiation:\n  - { a: bed A, b: frames, area_m2: 0.0552, emissivity: 0.9, factor: 0.5 }\nwalls:\n  - name: shell\n    a: bay\n    b: room\n    area_m2: 3.2\n    h_a_W_m2K: 8.0\n    h_b_W_m2K: 8.0\n    T0_C: 21.0\n    layers:\n      - { thickness_m: 0.012, k_W_mK: 0.13, rho_kg_m3: 500.0, c_J_kgK: 1600.0, nodes: 2 }\npaths:\n  - { name: low, type: orifice, from: room, to: bay, z_m: 0.05, Cd: 0.61, area_m2: 0.003, count: 1, dp_lin_Pa: 0.002 }\n  - { name: high, type: orifice, from: bay, to: room, z_m: 0.85, Cd: 0.61, area_m2: 0.003, count: 1, dp_lin_Pa: 0.002 }\nmachines:\n  - name: A\n    bed: { node: bed A, P_max_W: 220.0 }\n    modes:\n      easy: { bed_set_C: 60.0, powers: [{ node: frames, W: 25.0 }, { node: bay, W: 8.0 }] }\n      idle: { powers: [{ node: bay, W: 5.0 }] }\n  - name: B\n    bed: { node: bed B, P_max_W: 300.0 }\n    modes:\n      hot: { bed_set_C: 105.0, powers: [{ node: frames, W: 30.0 }] }\nschedule:\n  - { machine: A, mode: easy, start_s: 600.0, end_s: 9000.0 }\n  - { machine: B, mode: hot, start_s: 3000.0, end_s: 12000.0 }\n_ask:\n  - { id: holding_A_1, unit: s, tolerance: 2.0 }\n  - { id: holding_B_1, unit: s, tolerance: 2.0 }\n  - { id: T_bay@3000s, unit: C, tolerance: 0.03 }\n  - { id: T_bay@9000s, unit: C, tolerance: 0.03 }\n  - { id: T_shell.2@9000s, unit: C, tolerance: 0.03 }\n  - { id: T_frames@14400s, unit: C, tolerance: 0.03 }\n  - { id: bedpower_A@1500s, unit: W, tolerance: 0.05 }\n  - { id: bedpower_A@8000s, unit: W, tolerance: 0.05 }\n  - { id: bedpower_B@11000s, unit: W, tolerance: 0.05 }\n  - { id: flow_low@9000s, unit: kg/s, relative: 1.0e-03 }\n  - { id: peak_bay, unit: C, tolerance: 0.03 }\n  - { id: energy_bed_A, unit: J, relative: 1.0e-03 }\n  - { id: energy_bed_B, unit: J, relative: 1.0e-03 }\n  - { id: energy_machine_A, unit: J, relative: 1.0e-03 }\n",
  "answers": [
   {
    "id": "holding_A_1",
    "value": 700.1779677,
    "unit": "s",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 2
   },
   {
    "id": "holding_B_1",
    "value": 3254.217362,
    "unit": "s",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 2
   },
   {
    "id": "T_bay@3000s",
    "value": 24.87916615,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.03
   },
   {
    "id": "T_bay@9000s",
    "value": 34.37792032,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.03
   },
   {
    "id": "T_shell.2@9000s",
    "value": 26.63832563,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.03
   },
   {
    "id": "T_frames@14400s",
    "value": 30.34215322,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.03
   },
   {
    "id": "bedpower_A@1500s",
    "value": 33.82852014,
    "unit": "W",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.05
   },
   {
    "id": "bedpower_A@8000s",
    "value": 22.91422709,
    "unit": "W",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.05
   },
   {
    "id": "bedpower_B@11000s",
    "value": 68.68799849,
    "unit": "W",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.05
   },
   {
    "id": "flow_low@9000s",
    "value": 0.00126852233,
    "unit": "kg/s",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.00000127
   },
   {
    "id": "peak_bay",
    "value": 34.37792032,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.03
   },
   {
    "id": "energy_bed_A",
    "value": 250365.7134,
    "unit": "J",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 250
   },
   {
    "id": "energy_bed_B",
    "value": 678616.8649,
    "unit": "J",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 679
   },
   {
    "id": "energy_machine_A",
    "value": 557565.7134,
    "unit": "J",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 558
   }
  ]
 },
 {
  "id": "37-vertical-opening",
  "title": "A door that opens three times lets a warm bay mix with the room",
  "yaml": "id: 37-vertical-opening\ntitle: A door that opens three times lets a warm bay mix with the room\nduration_s: 3600.0\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: free, T0_C: 48.0, heat_capacity_J_K: 30000.0, pressure: fixed, volume_m3: 0.5, conc: free }\nheat_sources:\n  - { name: h, node: bay, W: 150.0 }\nconductances:\n  - { a: bay, b: room, W_K: 5.0 }\nexchanges:\n  - {\n      name: door,\n      a: bay,\n      b: room,\n      law: vertical_opening,\n      Cd: 0.62,\n      width_m: 0.6,\n      height_m: 0.7,\n      active: { windows: [[300.0, 330.0], [1200.0, 1260.0], [3000.0, 3600.0]] },\n    }\ncontaminants:\n  - { name: pn, unit: 1/cm3, scale: 1000.0, initial: { bay: 50000.0, room: 2000.0 } }\n_ask:\n  - { id: T_bay@330s, unit: C, tolerance: 0.02 }\n  - { id: T_bay@1260s, unit: C, tolerance: 0.02 }\n  - { id: T_bay@3060s, unit: C, tolerance: 0.02 }\n  - { id: T_bay@3600s, unit: C, tolerance: 0.02 }\n  - { id: pn_bay@330s, unit: 1/cm3, relative: 2.0e-03 }\n  - { id: pn_bay@3010s, unit: 1/cm3, relative: 5.0e-03 }\n  - { id: mean_pn_bay, unit: 1/cm3, relative: 2.0e-03 }\n",
  "answers": [
   {
    "id": "T_bay@330s",
    "value": 46.07794564,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "T_bay@1260s",
    "value": 43.14095553,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "T_bay@3060s",
    "value": 41.85623536,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "T_bay@3600s",
    "value": 29.54655135,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "pn_bay@330s",
    "value": 2900.173738,
    "unit": "1/cm3",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 5.8
   },
   {
    "id": "pn_bay@3010s",
    "value": 2000.124248,
    "unit": "1/cm3",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 10
   },
   {
    "id": "mean_pn_bay",
    "value": 6317.379952,
    "unit": "1/cm3",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 12.6
   }
  ]
 },
 {
  "id": "38-air-change-make-up",
  "title": "A room with an air change and an exhaust to outdoors",
  "yaml": "# The bay takes air from the room and blows it outdoors: the room makes it up from outdoors.\nid: 38-air-change-make-up\ntitle: A room with an air change and an exhaust to outdoors\nduration_s: 14400.0\nzones:\n  - { name: outdoor, T: fixed, T_C: 5.0, pressure: fixed }\n  - { name: room, T: free, T0_C: 21.0, heat_capacity_J_K: 200000.0, pressure: fixed, volume_m3: 54.0, conc: free }\n  - { name: bay, T: free, T0_C: 21.0, heat_capacity_J_K: 3000.0, pressure: fixed, volume_m3: 0.6, conc: free }\nconductances:\n  - { a: room, b: outdoor, W_K: 45.0 }\n  - { a: bay, b: room, W_K: 6.0 }\nheat_sources:\n  - { name: heating, node: room, W: 1100.0 }\n  - { name: machine, node: bay, W: 120.0 }\npaths:\n  - { name: in, type: fixed_flow, from: room, to: bay, kg_s: 0.012 }\n  - { name: out, type: fixed_flow, from: bay, to: outdoor, kg_s: 0.012, filter_eff: { voc: 0.5 } }\nair_change:\n  - { zone: room, with: outdoor, per_h: 0.4 }\ncontaminants:\n  - { name: voc, unit: ug/m3, scale: 10.0, initial: { outdoor: 5.0, room: 20.0, bay: 20.0 } }\nemissions:\n  - { contaminant: voc, zone: bay, rate: 0.8 }\n  - { contaminant: voc, zone: room, rate: 0.1 }\n_ask:\n  - { id: T_room@3600s, unit: C, tolerance: 0.01 }\n  - { id: T_bay@3600s, unit: C, tolerance: 0.01 }\n  - { id: T_room@14400s, unit: C, tolerance: 0.01 }\n  - { id: T_bay@14400s, unit: C, tolerance: 0.01 }\n  - { id: voc_room@3600s, unit: ug/m3, relative: 2.0e-03 }\n  - { id: voc_bay@3600s, unit: ug/m3, relative: 2.0e-03 }\n  - { id: voc_room@14400s, unit: ug/m3, relative: 2.0e-03 }\n  - { id: voc_bay@14400s, unit: ug/m3, relative: 2.0e-03 }\n  - { id: mean_voc_room, unit: ug/m3, relative: 2.0e-03 }\n",
  "answers": [
   {
    "id": "T_room@3600s",
    "value": 22.16730927,
    "unit": "C",
    "method": "matrix exponential",
    "tolerance": 0.01
   },
   {
    "id": "T_bay@3600s",
    "value": 28.77626706,
    "unit": "C",
    "method": "matrix exponential",
    "tolerance": 0.01
   },
   {
    "id": "T_room@14400s",
    "value": 22.70517881,
    "unit": "C",
    "method": "matrix exponential",
    "tolerance": 0.01
   },
   {
    "id": "T_bay@14400s",
    "value": 29.34430101,
    "unit": "C",
    "method": "matrix exponential",
    "tolerance": 0.01
   },
   {
    "id": "voc_room@3600s",
    "value": 14.26134564,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.0285
   },
   {
    "id": "voc_bay@3600s",
    "value": 94.31584963,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.189
   },
   {
    "id": "voc_room@14400s",
    "value": 11.37274909,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.0227
   },
   {
    "id": "voc_bay@14400s",
    "value": 91.37497079,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.183
   },
   {
    "id": "mean_voc_room",
    "value": 13.27201193,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.0265
   }
  ]
 },
 {
  "id": "39-sealed-island",
  "title": "An island of two bays without a way out",
  "yaml": "# Two bays joined to one another and to nothing else: what is emitted stays; the difference decays with its own time constant.\nid: 39-sealed-island\ntitle: An island of two bays without a way out\nduration_s: 3600.0\ndensity: { model: constant, value: 1.2 }\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: left, T: fixed, T_C: 30.0, pressure: solved, volume_m3: 0.4, conc: free }\n  - { name: right, T: fixed, T_C: 30.0, pressure: solved, volume_m3: 0.6, conc: free }\npaths:\n  - { name: hole, type: orifice, from: left, to: right, z_m: 0.5, Cd: 0.61, area_m2: 0.004, count: 1, dp_lin_Pa: 0.002 }\nexchanges:\n  - { a: left, b: right, m3_s: 0.0003 }\ncontaminants:\n  - { name: pn, unit: 1/m3, scale: 1.0e+09, initial: { left: 2.0e+10, right: 1.0e+09 } }\nemissions:\n  - { contaminant: pn, zone: left, rate: 3.0e+06 }\n_ask:\n  - { id: flow_hole@3600s, unit: kg/s, tolerance: 1.0e-09 }\n  - { id: pn_left@600s, unit: 1/m3, relative: 2.0e-03 }\n  - { id: pn_right@600s, unit: 1/m3, relative: 2.0e-03 }\n  - { id: pn_left@3600s, unit: 1/m3, relative: 2.0e-03 }\n  - { id: pn_right@3600s, unit: 1/m3, relative: 2.0e-03 }\n",
  "answers": [
   {
    "id": "flow_hole@3600s",
    "value": 0,
    "unit": "kg/s",
    "method": "matrix exponential",
    "tolerance": 1e-9
   },
   {
    "id": "pn_left@600s",
    "value": 17684459110,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 35400000
   },
   {
    "id": "pn_right@600s",
    "value": 5543693926,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 11100000
   },
   {
    "id": "pn_left@3600s",
    "value": 23086650170,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 46200000
   },
   {
    "id": "pn_right@3600s",
    "value": 16942233220,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 33900000
   }
  ]
 },
 {
  "id": "40-windows",
  "title": "A heater and an opening with windows",
  "yaml": "# Piecewise exponentials: the heater and the flow have windows of their own, one window touches the next.\nid: 40-windows\ntitle: A heater and an opening with windows\nduration_s: 5000.0\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: free, T0_C: 21.0, heat_capacity_J_K: 2500.0, pressure: fixed }\nconductances:\n  - { a: bay, b: room, W_K: 3.2 }\nheat_sources:\n  - { name: heater, node: bay, W: 80.0, active: { windows: [[500.0, 1500.0], [1500.0, 2500.0], [4000.0, 4600.0]] } }\npaths:\n  - { name: in, type: fixed_flow, from: room, to: bay, kg_s: 0.005, open: { windows: [[1000.0, 3000.0]] } }\n  - { name: out, type: fixed_flow, from: bay, to: room, kg_s: 0.005, open: { windows: [[1000.0, 3000.0]] } }\n_ask:\n  - { id: T_bay@500s, unit: C, tolerance: 0.01 }\n  - { id: T_bay@1000s, unit: C, tolerance: 0.01 }\n  - { id: T_bay@2500s, unit: C, tolerance: 0.01 }\n  - { id: T_bay@3000s, unit: C, tolerance: 0.01 }\n  - { id: T_bay@4600s, unit: C, tolerance: 0.01 }\n  - { id: T_bay@5000s, unit: C, tolerance: 0.01 }\n  - { id: flow_in@999s, unit: kg/s, tolerance: 1.0e-12 }\n  - { id: flow_in@1000s, unit: kg/s, tolerance: 1.0e-12 }\n  - { id: flow_in@3000s, unit: kg/s, tolerance: 1.0e-12 }\n  - { id: energy_source_heater, unit: J, tolerance: 200.0 }\n",
  "answers": [
   {
    "id": "T_bay@500s",
    "value": 21,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "T_bay@1000s",
    "value": 32.8176894,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "T_bay@2500s",
    "value": 30.73556897,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "T_bay@3000s",
    "value": 22.87720897,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "T_bay@4600s",
    "value": 34.6436456,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "T_bay@5000s",
    "value": 29.17657934,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "flow_in@999s",
    "value": 0,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 1e-12
   },
   {
    "id": "flow_in@1000s",
    "value": 0.005,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 1e-12
   },
   {
    "id": "flow_in@3000s",
    "value": 0,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 1e-12
   },
   {
    "id": "energy_source_heater",
    "value": 208000,
    "unit": "J",
    "method": "closed form",
    "tolerance": 200
   }
  ]
 },
 {
  "id": "41-machine-controls-fan",
  "title": "A fan that runs with the machine, through a filter, from a bay with one inlet",
  "yaml": "id: 41-machine-controls-fan\ntitle: A fan that runs with the machine, through a filter, from a bay with one inlet\nduration_s: 10800.0\nfan_density_scaling: true\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, volume_m3: 54.0, conc: free }\n  - {\n      name: bay,\n      T: free,\n      T0_C: 21.0,\n      heat_capacity_J_K: 4000.0,\n      pressure: solved,\n      z_ref_m: 0.0,\n      volume_m3: 0.5,\n      conc: free,\n    }\nnodes:\n  - { name: body, C_J_K: 8000.0, T0_C: 21.0 }\npaths:\n  - { name: inlet, type: orifice, from: room, to: bay, z_m: 0.1, Cd: 0.61, area_m2: 0.002, count: 1, dp_lin_Pa: 0.002 }\n  - name: exhaust\n    type: fan_path\n    from: bay\n    to: room\n    z_m: 0.9\n    filter_eff: { pn: 0.95 }\n    fan:\n      curve: { poly: { p0: 40.0, a: 1000.0, b: 120000.0 } }\n      control: { machine: A }\n      stopped: { K: [{ K: 4.0, area_m2: 0.004 }] }\n    filter: { a: 2200.0, b: 40000.0 }\nmachines:\n  - name: A\n    modes:\n      print:\n        powers: [{ node: body, W: 110.0 }]\n        emission: [{ contaminant: pn, zone: bay, rate: 2.0e+09 }]\nschedule:\n  - { machine: A, mode: print, start_s: 900.0, end_s: 7200.0 }\ncontaminants:\n  - {\n      name: pn,\n      unit: 1/m3,\n      scale: 1.0e+10,\n      initial: { room: 3.0e+09, bay: 3.0e+09 },\n      deposition_per_h: { room: 0.3, bay: 1.5 },\n    }\nconductances:\n  - { a: body, b: bay, W_K: 4.0 }\n  - { a: bay, b: room, W_K: 7.0 }\n_ask:\n  - { id: T_bay@7200s, unit: C, tolerance: 0.02 }\n  - { id: T_body@7200s, unit: C, tolerance: 0.02 }\n  - { id: T_bay@10800s, unit: C, tolerance: 0.02 }\n  - { id: flow_exhaust@3600s, unit: kg/s, relative: 5.0e-04 }\n  - { id: flow_exhaust@7500s, unit: kg/s, relative: 2.0e-03 }\n  - { id: p_bay@3600s, unit: Pa, tolerance: 0.01 }\n  - { id: pn_bay@7200s, unit: 1/m3, relative: 3.0e-03 }\n  - { id: pn_room@7200s, unit: 1/m3, relative: 3.0e-03 }\n  - { id: pn_bay@10800s, unit: 1/m3, relative: 5.0e-03 }\n  - { id: mean_pn_room, unit: 1/m3, relative: 3.0e-03 }\n  - { id: energy_machine_A, unit: J, relative: 1.0e-04 }\n",
  "answers": [
   {
    "id": "T_bay@7200s",
    "value": 27.99211124,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "T_body@7200s",
    "value": 53.04549666,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "T_bay@10800s",
    "value": 25.27339321,
    "unit": "C",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.02
   },
   {
    "id": "flow_exhaust@3600s",
    "value": 0.007166120228,
    "unit": "kg/s",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.00000358
   },
   {
    "id": "flow_exhaust@7500s",
    "value": 0.000145490992,
    "unit": "kg/s",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 2.91e-7
   },
   {
    "id": "p_bay@3600s",
    "value": -14.39451352,
    "unit": "Pa",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 0.01
   },
   {
    "id": "pn_bay@7200s",
    "value": 332739186700,
    "unit": "1/m3",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 998000000
   },
   {
    "id": "pn_room@7200s",
    "value": 7403594099,
    "unit": "1/m3",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 22200000
   },
   {
    "id": "pn_bay@10800s",
    "value": 38814969190,
    "unit": "1/m3",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 194000000
   },
   {
    "id": "mean_pn_room",
    "value": 5571326848,
    "unit": "1/m3",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 16700000
   },
   {
    "id": "energy_machine_A",
    "value": 693000,
    "unit": "J",
    "method": "SciPy: solve_ivp Radau",
    "tolerance": 69.3
   }
  ]
 },
 {
  "id": "42-recirculation",
  "title": "A cleaner that runs with the machine",
  "yaml": "# First-order removal: C = S/k + (C0 - S/k) exp(-k t), with k from deposition, and from the cleaner while the machine runs.\nid: 42-recirculation\ntitle: A cleaner that runs with the machine\nduration_s: 7200.0\nzones:\n  - { name: bay, T: fixed, T_C: 30.0, pressure: fixed, volume_m3: 0.6, conc: free }\nmachines:\n  - name: A\n    modes:\n      print: {}\nschedule:\n  - { machine: A, mode: print, start_s: 0.0, end_s: 3600.0 }\ncontaminants:\n  - { name: pn, unit: 1/m3, scale: 1.0e+07, initial: { bay: 1.0e+09 }, deposition_per_h: { bay: 2.0 } }\nrecirculation:\n  - { name: cleaner, zone: bay, m3_h: 25.0, eff: { pn: 0.9 }, active: { machine: A } }\nemissions:\n  - { contaminant: pn, zone: bay, rate: 1.0e+08, active: { windows: [[600.0, 3600.0]] } }\n_ask:\n  - { id: pn_bay@600s, unit: 1/m3, relative: 2.0e-03 }\n  - { id: pn_bay@1000s, unit: 1/m3, relative: 2.0e-03 }\n  - { id: pn_bay@3600s, unit: 1/m3, relative: 2.0e-03 }\n  - { id: pn_bay@7200s, unit: 1/m3, relative: 2.0e-03 }\n",
  "answers": [
   {
    "id": "pn_bay@600s",
    "value": 1383230.832,
    "unit": "1/m3",
    "method": "closed form",
    "tolerance": 2770
   },
   {
    "id": "pn_bay@1000s",
    "value": 15001315670,
    "unit": "1/m3",
    "method": "closed form",
    "tolerance": 30000000
   },
   {
    "id": "pn_bay@3600s",
    "value": 15189873420,
    "unit": "1/m3",
    "method": "closed form",
    "tolerance": 30400000
   },
   {
    "id": "pn_bay@7200s",
    "value": 2055725821,
    "unit": "1/m3",
    "method": "closed form",
    "tolerance": 4110000
   }
  ]
 },
 {
  "id": "43-emission-by-mode",
  "title": "One machine, three modes, an air change",
  "yaml": "# Piecewise exponentials with the rates of three modes.\nid: 43-emission-by-mode\ntitle: One machine, three modes, an air change\nduration_s: 14400.0\nzones:\n  - { name: outdoor, T: fixed, T_C: 21.0, pressure: fixed }\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, volume_m3: 40.0, conc: free }\nmachines:\n  - name: A\n    modes:\n      easy: { emission: [{ contaminant: voc, zone: room, rate: 0.02 }] }\n      smelly: { emission: [{ contaminant: voc, zone: room, rate: 1.1 }] }\n      idle: { emission: [{ contaminant: voc, zone: room, rate: 0.001 }] }\nschedule:\n  - { machine: A, mode: easy, start_s: 1000.0, end_s: 4000.0 }\n  - { machine: A, mode: smelly, start_s: 4000.0, end_s: 9000.0 }\ncontaminants:\n  - { name: voc, unit: ug/m3, scale: 10.0, initial: { outdoor: 3.0, room: 8.0 } }\nair_change:\n  - { zone: room, with: outdoor, per_h: 0.6 }\n_ask:\n  - { id: voc_room@1000s, unit: ug/m3, relative: 2.0e-03 }\n  - { id: voc_room@4000s, unit: ug/m3, relative: 2.0e-03 }\n  - { id: voc_room@9000s, unit: ug/m3, relative: 2.0e-03 }\n  - { id: voc_room@14400s, unit: ug/m3, relative: 2.0e-03 }\n",
  "answers": [
   {
    "id": "voc_room@1000s",
    "value": 7.255436366,
    "unit": "ug/m3",
    "method": "closed form",
    "tolerance": 0.0145
   },
   {
    "id": "voc_room@4000s",
    "value": 6.761460647,
    "unit": "ug/m3",
    "method": "closed form",
    "tolerance": 0.0135
   },
   {
    "id": "voc_room@9000s",
    "value": 97.92601965,
    "unit": "ug/m3",
    "method": "closed form",
    "tolerance": 0.196
   },
   {
    "id": "voc_room@14400s",
    "value": 41.68305406,
    "unit": "ug/m3",
    "method": "closed form",
    "tolerance": 0.0834
   }
  ]
 },
 {
  "id": "44-filter-in-back-flow",
  "title": "Known flows backwards through filters",
  "yaml": "# The flow runs against its path: the filter works all the same. Matrix exponential of two zones.\nid: 44-filter-in-back-flow\ntitle: Known flows backwards through filters\nduration_s: 7200.0\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, volume_m3: 30.0, conc: free }\n  - { name: bay, T: fixed, T_C: 35.0, pressure: fixed, volume_m3: 0.5, conc: free }\npaths:\n  - { name: exhaust, type: fixed_flow, from: bay, to: room, kg_s: -0.006, filter_eff: { pn: 0.95, voc: 0.4 } }\n  - { name: inlet, type: fixed_flow, from: room, to: bay, kg_s: -0.006, filter_eff: { pn: 0.2 } }\ncontaminants:\n  - {\n      name: pn,\n      unit: 1/m3,\n      scale: 1.0e+10,\n      initial: { room: 4.0e+09, bay: 9.0e+10 },\n      deposition_per_h: { room: 0.4, bay: 1.2 },\n    }\n  - { name: voc, unit: ug/m3, scale: 10.0, initial: { room: 15.0, bay: 80.0 } }\nemissions:\n  - { contaminant: pn, zone: bay, rate: 5.0e+08 }\n_ask:\n  - { id: pn_room@600s, unit: 1/m3, relative: 3.0e-03 }\n  - { id: pn_bay@600s, unit: 1/m3, relative: 3.0e-03 }\n  - { id: pn_room@7200s, unit: 1/m3, relative: 3.0e-03 }\n  - { id: pn_bay@7200s, unit: 1/m3, relative: 3.0e-03 }\n  - { id: voc_room@600s, unit: ug/m3, relative: 3.0e-03 }\n  - { id: voc_bay@600s, unit: ug/m3, relative: 3.0e-03 }\n  - { id: voc_bay@7200s, unit: ug/m3, relative: 3.0e-03 }\n",
  "answers": [
   {
    "id": "pn_room@600s",
    "value": 10462215200,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 31400000
   },
   {
    "id": "pn_bay@600s",
    "value": 97218092630,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 292000000
   },
   {
    "id": "pn_room@7200s",
    "value": 41360458030,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 124000000
   },
   {
    "id": "pn_bay@7200s",
    "value": 98767427360,
    "unit": "1/m3",
    "method": "matrix exponential",
    "tolerance": 296000000
   },
   {
    "id": "voc_room@600s",
    "value": 15.54734259,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.0466
   },
   {
    "id": "voc_bay@600s",
    "value": 9.555921083,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.0287
   },
   {
    "id": "voc_bay@7200s",
    "value": 6.075401802,
    "unit": "ug/m3",
    "method": "matrix exponential",
    "tolerance": 0.0182
   }
  ]
 },
 {
  "id": "45-sweep-inlet",
  "title": "The inlet of a fan-drawn bay from nothing to large: a starved fan draws through the leak",
  "yaml": "id: 45-sweep-inlet\ntitle: \"The inlet of a fan-drawn bay from nothing to large: a starved fan draws through the leak\"\nanalysis: network\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: fixed, T_C: 35.0, pressure: solved }\npaths:\n  - { name: inlet, type: orifice, from: room, to: bay, z_m: 0.1, Cd: 0.61, area_m2: 0.001, count: 1, dp_lin_Pa: 0.001 }\n  - { name: leak, type: crack, from: room, to: bay, z_m: 0.5, c_m3_s: 0.0003, n: 0.65, dp_lin_Pa: 0.001 }\n  - name: exhaust\n    type: fan_path\n    from: bay\n    to: room\n    z_m: 0.9\n    fan: { curve: { poly: { p0: 40.0, a: 1000.0, b: 120000.0 } }, control: always }\n    filter: { a: 2200.0, b: 40000.0 }\nsweep: { path: inlet, key: area_m2, values: [0.0, 0.0005, 0.002, 0.008] }\n_ask:\n  - { id: \"flow_inlet#1\", unit: kg/s, tolerance: 1.0e-12 }\n  - { id: \"flow_exhaust#1\", unit: kg/s, relative: 1.0e-04 }\n  - { id: \"p_bay#1\", unit: Pa, tolerance: 0.003 }\n  - { id: \"flow_exhaust#2\", unit: kg/s, relative: 1.0e-04 }\n  - { id: \"flow_inlet#2\", unit: kg/s, relative: 1.0e-04 }\n  - { id: \"flow_exhaust#3\", unit: kg/s, relative: 1.0e-04 }\n  - { id: \"flow_exhaust#4\", unit: kg/s, relative: 1.0e-04 }\n  - { id: \"p_bay#4\", unit: Pa, tolerance: 0.001 }\n",
  "answers": [
   {
    "id": "flow_inlet#1",
    "value": 0,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 1e-12
   },
   {
    "id": "flow_exhaust#1",
    "value": 0.003268559803,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 3.27e-7
   },
   {
    "id": "p_bay#1",
    "value": -30.04748155,
    "unit": "Pa",
    "method": "SciPy: brentq and Newton",
    "tolerance": 0.003
   },
   {
    "id": "flow_exhaust#2",
    "value": 0.005042999904,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 5.04e-7
   },
   {
    "id": "flow_inlet#2",
    "value": 0.002277775976,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 2.28e-7
   },
   {
    "id": "flow_exhaust#3",
    "value": 0.007885838875,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 7.89e-7
   },
   {
    "id": "flow_exhaust#4",
    "value": 0.009764279415,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 9.76e-7
   },
   {
    "id": "p_bay#4",
    "value": -1.578147587,
    "unit": "Pa",
    "method": "SciPy: brentq and Newton",
    "tolerance": 0.001
   }
  ]
 },
 {
  "id": "46-constant-density",
  "title": "A warm bay with two openings in a model of constant density",
  "yaml": "# Without a difference of density there is no stack: no flow, and the bay takes the room's pressure.\nid: 46-constant-density\ntitle: A warm bay with two openings in a model of constant density\nanalysis: network\ndensity: { model: constant, value: 1.2 }\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: fixed, T_C: 45.0, pressure: solved }\npaths:\n  - { name: low, type: orifice, from: room, to: bay, z_m: 0.1, Cd: 0.61, area_m2: 0.005, count: 1, dp_lin_Pa: 0.001 }\n  - { name: high, type: orifice, from: bay, to: room, z_m: 1.1, Cd: 0.61, area_m2: 0.005, count: 1, dp_lin_Pa: 0.001 }\n_ask:\n  - { id: flow_low, unit: kg/s, tolerance: 1.0e-09 }\n  - { id: flow_high, unit: kg/s, tolerance: 1.0e-09 }\n  - { id: p_bay, unit: Pa, tolerance: 1.0e-06 }\n",
  "answers": [
   {
    "id": "flow_low",
    "value": 0,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 1e-9
   },
   {
    "id": "flow_high",
    "value": 0,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 1e-9
   },
   {
    "id": "p_bay",
    "value": 0,
    "unit": "Pa",
    "method": "closed form",
    "tolerance": 0.000001
   }
  ]
 },
 {
  "id": "47-empty-schedule",
  "title": "A machine that only idles",
  "yaml": "# Nothing is scheduled: the machine idles from start to end.\nid: 47-empty-schedule\ntitle: A machine that only idles\nduration_s: 7200.0\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: free, T0_C: 18.0, heat_capacity_J_K: 2500.0, pressure: fixed }\nnodes:\n  - { name: bed, C_J_K: 500.0, T0_C: 60.0 }\nconductances:\n  - { a: bay, b: room, W_K: 2.8 }\n  - { a: bed, b: room, W_K: 0.9 }\nmachines:\n  - name: A\n    bed: { node: bed, P_max_W: 200.0 }\n    modes:\n      print: { bed_set_C: 60.0, powers: [{ node: bay, W: 80.0 }] }\n      idle: { powers: [{ node: bay, W: 6.0 }] }\nschedule: []\n_ask:\n  - { id: T_bay@900s, unit: C, tolerance: 0.01 }\n  - { id: T_bay@7200s, unit: C, tolerance: 0.01 }\n  - { id: T_bed@900s, unit: C, tolerance: 0.01 }\n  - { id: energy_bed_A, unit: J, tolerance: 0.001 }\n  - { id: energy_machine_A, unit: J, tolerance: 1.0 }\n",
  "answers": [
   {
    "id": "T_bay@900s",
    "value": 21.26598096,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "T_bay@7200s",
    "value": 23.14123886,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "T_bed@900s",
    "value": 28.71804926,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "energy_bed_A",
    "value": 0,
    "unit": "J",
    "method": "closed form",
    "tolerance": 0.001
   },
   {
    "id": "energy_machine_A",
    "value": 43200,
    "unit": "J",
    "method": "closed form",
    "tolerance": 1
   }
  ]
 },
 {
  "id": "48-three-bays",
  "title": "Three bays over one another at three temperatures, leaky, with a fan on top",
  "yaml": "id: 48-three-bays\ntitle: Three bays over one another at three temperatures, leaky, with a fan on top\nanalysis: network\nfan_density_scaling: true\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 1.0 }\n  - { name: cellar, T: fixed, T_C: 28.0, pressure: solved, z_ref_m: 0.3 }\n  - { name: middle, T: fixed, T_C: 41.0, pressure: solved, z_ref_m: 0.9 }\n  - { name: loft, T: fixed, T_C: 36.0, pressure: solved, z_ref_m: 1.6 }\npaths:\n  - {\n      name: inlet,\n      type: orifice,\n      from: room,\n      to: cellar,\n      z_m: 0.05,\n      Cd: 0.61,\n      area_m2: 0.0018,\n      count: 2,\n      dp_lin_Pa: 0.002,\n    }\n  - {\n      name: deck 1,\n      type: orifice,\n      from: cellar,\n      to: middle,\n      z_m: 0.6,\n      Cd: 0.65,\n      area_m2: 0.006,\n      count: 1,\n      dp_lin_Pa: 0.002,\n    }\n  - {\n      name: deck 2,\n      type: orifice,\n      from: middle,\n      to: loft,\n      z_m: 1.3,\n      Cd: 0.65,\n      area_m2: 0.006,\n      count: 1,\n      dp_lin_Pa: 0.002,\n    }\n  - { name: seal low, type: crack, from: middle, to: room, z_m: 0.65, c_m3_s: 0.0005, n: 0.65, dp_lin_Pa: 0.002 }\n  - { name: seal high, type: crack, from: middle, to: room, z_m: 1.25, c_m3_s: 0.0005, n: 0.65, dp_lin_Pa: 0.002 }\n  - { name: seal loft, type: crack, from: loft, to: room, z_m: 1.8, c_m3_s: 0.0009, n: 0.6, dp_lin_Pa: 0.002 }\n  - name: exhaust\n    type: fan_path\n    from: loft\n    to: room\n    z_m: 1.75\n    fan:\n      curve:\n        points:\n          - [0.0, 22.0]\n          - [0.005, 17.0]\n          - [0.01, 9.0]\n          - [0.014, 0.0]\n      control: always\n    filter: { a: 900.0, b: 20000.0 }\n_ask:\n  - { id: flow_inlet, unit: kg/s, relative: 1.0e-04 }\n  - { id: flow_deck 1, unit: kg/s, relative: 1.0e-04 }\n  - { id: flow_deck 2, unit: kg/s, relative: 1.0e-04 }\n  - { id: flow_seal low, unit: kg/s, relative: 1.0e-03 }\n  - { id: flow_seal high, unit: kg/s, relative: 1.0e-03 }\n  - { id: flow_seal loft, unit: kg/s, relative: 1.0e-04 }\n  - { id: flow_exhaust, unit: kg/s, relative: 1.0e-04 }\n  - { id: p_cellar, unit: Pa, tolerance: 0.001 }\n  - { id: p_middle, unit: Pa, tolerance: 0.001 }\n  - { id: p_loft, unit: Pa, tolerance: 0.001 }\n  - { id: dp_seal high, unit: Pa, tolerance: 0.001 }\n",
  "answers": [
   {
    "id": "flow_inlet",
    "value": 0.004877939532,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 4.88e-7
   },
   {
    "id": "flow_deck 1",
    "value": 0.004877939532,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 4.88e-7
   },
   {
    "id": "flow_deck 2",
    "value": 0.006943928733,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 6.94e-7
   },
   {
    "id": "flow_seal low",
    "value": -0.00109842933,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 0.0000011
   },
   {
    "id": "flow_seal high",
    "value": -0.0009675598712,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 9.68e-7
   },
   {
    "id": "flow_seal loft",
    "value": -0.002159492057,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 2.16e-7
   },
   {
    "id": "flow_exhaust",
    "value": 0.00910342079,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 9.1e-7
   },
   {
    "id": "p_cellar",
    "value": 6.25012681,
    "unit": "Pa",
    "method": "SciPy: brentq and Newton",
    "tolerance": 0.001
   },
   {
    "id": "p_middle",
    "value": -1.171202805,
    "unit": "Pa",
    "method": "SciPy: brentq and Newton",
    "tolerance": 0.001
   },
   {
    "id": "p_loft",
    "value": -10.34854918,
    "unit": "Pa",
    "method": "SciPy: brentq and Newton",
    "tolerance": 0.001
   },
   {
    "id": "dp_seal high",
    "value": -2.085785509,
    "unit": "Pa",
    "method": "SciPy: brentq and Newton",
    "tolerance": 0.001
   }
  ]
 },
 {
  "id": "49-outdoor-ramp",
  "title": "A zone that follows a ramp of the room's temperature",
  "yaml": "# A body follows a ramp of its surroundings with its time constant behind: T = T0 + r (t - tau + tau exp(-t/tau)).\nid: 49-outdoor-ramp\ntitle: A zone that follows a ramp of the room's temperature\nduration_s: 7200.0\nzones:\n  - name: room\n    T: fixed\n    pressure: fixed\n    T_C:\n      - [0.0, 18.0]\n      - [3600.0, 26.0]\n  - { name: bay, T: free, T0_C: 18.0, heat_capacity_J_K: 2500.0, pressure: fixed }\nconductances:\n  - { a: bay, b: room, W_K: 3.0 }\n_ask:\n  - { id: T_bay@900s, unit: C, tolerance: 0.01 }\n  - { id: T_bay@3600s, unit: C, tolerance: 0.01 }\n  - { id: T_bay@7200s, unit: C, tolerance: 0.01 }\n  - { id: T_room@1800s, unit: C, tolerance: 1.0e-06 }\n",
  "answers": [
   {
    "id": "T_bay@900s",
    "value": 18.77702875,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "T_bay@3600s",
    "value": 24.17277756,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "T_bay@7200s",
    "value": 25.97569815,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.01
   },
   {
    "id": "T_room@1800s",
    "value": 22,
    "unit": "C",
    "method": "closed form",
    "tolerance": 0.000001
   }
  ]
 },
 {
  "id": "50-other-constants",
  "title": "Stack flow where gravity is weaker and the air thinner",
  "yaml": "# Gravity and the atmosphere of another place: the stack follows.\nid: 50-other-constants\ntitle: Stack flow where gravity is weaker and the air thinner\nanalysis: network\nconstants: { g_m_s2: 3.72, p_atm_Pa: 70000.0 }\nzones:\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0, volume_m3: 1.0, conc: fixed }\n  - { name: bay, T: fixed, T_C: 45.0, pressure: solved }\npaths:\n  - { name: low, type: orifice, from: room, to: bay, z_m: 0.1, Cd: 0.61, area_m2: 0.005, count: 1, dp_lin_Pa: 1.0e-05 }\n  - { name: high, type: orifice, from: bay, to: room, z_m: 1.1, Cd: 0.61, area_m2: 0.003, count: 1, dp_lin_Pa: 1.0e-05 }\n_ask:\n  - { id: flow_low, unit: kg/s, relative: 1.0e-04 }\n  - { id: flow_high, unit: kg/s, relative: 1.0e-04 }\n  - { id: dp_low, unit: Pa, relative: 1.0e-03 }\n",
  "answers": [
   {
    "id": "flow_low",
    "value": 0.0009466081756,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 9.47e-8
   },
   {
    "id": "flow_high",
    "value": 0.0009466081756,
    "unit": "kg/s",
    "method": "closed form",
    "tolerance": 9.47e-8
   },
   {
    "id": "dp_low",
    "value": 0.0580960702,
    "unit": "Pa",
    "method": "closed form",
    "tolerance": 0.0000581
   }
  ]
 },
 {
  "id": "51-three-rooms",
  "title": "Three rooms with a door between two of them",
  "yaml": "# Rooms and numbers of the three-room case in M. Wetter, \"Multizone airflow model in Modelica\", 5th Modelica Conference, 2006,\n# table 2, whose printed flows are compared apart from this file. Here the same law is added up over 20000 slices of the door.\nid: 51-three-rooms\ntitle: Three rooms with a door between two of them\nanalysis: network\nzones:\n  - { name: out, T: fixed, T_C: 10.0, pressure: fixed, p_ref_Pa: 0.0, z_ref_m: 0.0 }\n  - { name: west, T: fixed, T_C: 25.0, pressure: solved, z_ref_m: 0.0 }\n  - { name: east, T: fixed, T_C: 20.0, pressure: solved, z_ref_m: 0.0 }\n  - { name: top, T: fixed, T_C: 20.0, pressure: solved, z_ref_m: 3.0 }\npaths:\n  - {\n      name: door,\n      type: tall_opening,\n      from: west,\n      to: east,\n      z_m: 0.0,\n      Cd: 0.78,\n      width_m: 1.0,\n      height_m: 2.2,\n      dp_lin_Pa: 1.0e-06,\n    }\n  - {\n      name: west top,\n      type: orifice,\n      from: west,\n      to: top,\n      z_m: 3.0,\n      Cd: 0.65,\n      area_m2: 0.01,\n      count: 1,\n      dp_lin_Pa: 1.0e-05,\n    }\n  - {\n      name: top east,\n      type: orifice,\n      from: top,\n      to: east,\n      z_m: 3.0,\n      Cd: 0.65,\n      area_m2: 0.01,\n      count: 1,\n      dp_lin_Pa: 1.0e-05,\n    }\n  - {\n      name: bottom,\n      type: orifice,\n      from: out,\n      to: east,\n      z_m: 0.0,\n      Cd: 0.65,\n      area_m2: 0.01,\n      count: 1,\n      dp_lin_Pa: 1.0e-05,\n    }\n  - { name: roof, type: orifice, from: east, to: out, z_m: 3.0, Cd: 0.65, area_m2: 0.01, count: 1, dp_lin_Pa: 1.0e-05 }\n_ask:\n  - { id: flow_door, unit: kg/s, relative: 1.0e-03 }\n  - { id: flow_west top, unit: kg/s, relative: 1.0e-03 }\n  - { id: flow_top east, unit: kg/s, relative: 1.0e-03 }\n  - { id: flow_bottom, unit: kg/s, relative: 1.0e-03 }\n  - { id: flow_roof, unit: kg/s, relative: 1.0e-03 }\n",
  "answers": [
   {
    "id": "flow_door",
    "value": -0.004355596042,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 0.00000436
   },
   {
    "id": "flow_west top",
    "value": 0.004355596042,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 0.00000436
   },
   {
    "id": "flow_top east",
    "value": 0.004355596042,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 0.00000436
   },
   {
    "id": "flow_bottom",
    "value": 0.008046801238,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 0.00000805
   },
   {
    "id": "flow_roof",
    "value": 0.008046801238,
    "unit": "kg/s",
    "method": "SciPy: brentq and Newton",
    "tolerance": 0.00000805
   }
  ]
 },
 {
  "id": "52-one-crossing",
  "title": "Every crossing of a fan without a dip",
  "yaml": "# A falling curve crosses the system once, and straight pieces give the flow in closed form.\nid: 52-one-crossing\ntitle: Every crossing of a fan without a dip\nanalysis: operating_points\ndensity: { model: constant, value: 1.2 }\nzones:\n  - { name: bay, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0.0 }\n  - { name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 8.0 }\npaths:\n  - name: exhaust\n    type: fan_path\n    from: bay\n    to: room\n    z_m: 0.0\n    fan:\n      curve:\n        points:\n          - [0.0, 40.0]\n          - [0.004, 33.0]\n          - [0.009, 15.0]\n          - [0.012, 0.0]\n      control: always\n    filter: { a: 1500.0, b: 0.0 }\n_ask:\n  - { id: count, unit: \"1\", tolerance: 0.4 }\n  - { id: Q_1_stable, unit: m3/h, tolerance: 0.02 }\n",
  "answers": [
   {
    "id": "count",
    "value": 1,
    "unit": "1",
    "method": "closed form",
    "tolerance": 0.4
   },
   {
    "id": "Q_1_stable",
    "value": 27.81176471,
    "unit": "m3/h",
    "method": "closed form",
    "tolerance": 0.02
   }
  ]
 }
];
