// SPDX-License-Identifier: MIT
#pragma once

/// Joints the tests change in one thing or another. They are like the demo's, but stay as they are when the demo is tuned.
/// All invented.
namespace joint_tests {

/// A steel leg lapped under a rail with tubes between the walls: six bolts in one line, one faying plane.
inline constexpr const char* lapped_rail = R"toml(title = "Honey trailer 2.6 t: drawbar leg lapped under the box rail"
service-class = "off road"
life = "20 years"

[bolt]
size = "M16"
class = "8.8"
finish = "hot-dip galvanised, waxed"

[tightening]
method = "torque wrench, friction class B"

[pattern]
positions = [
    ["-480 mm", "0 mm"], ["-400 mm", "0 mm"], ["-320 mm", "0 mm"],
    ["320 mm", "0 mm"], ["400 mm", "0 mm"], ["480 mm", "0 mm"],
]

[[part]]
kind = "washer"
series = "ISO 7089"

[[part]]
kind = "plate"
name = "drawbar"
material = "S355, up to 16 mm"
thickness = "10 mm"
surface = "hot-dip galvanised, sweep blasted"
outline = {x-min = "-530 mm", y-min = "-40 mm", y-max = "40 mm"}

[[part]]
kind = "section"
name = "rail"
material = "EN AW-6082-T6 extruded, up to 5 mm"
width = "80 mm"
height = "100 mm"
wall = "5 mm"
height-tolerance = "0.2 mm"
surface = "blasted"
x-max = "540 mm"
tube = {arrangement = "between the walls", material = "E355+N precision tube"}

[[part]]
kind = "washer"
series = "ISO 7089"

[temperatures]
assembly = "20 degC"
coldest = "-15 degC"
hottest = "65 degC"

[[load-case]]
name = "standing, nose load"
format = "static"
at = ["1800 mm", "0 mm", "120 mm"]
force = ["0 kN", "0 kN", "-1.53 kN"]

[[load-case]]
name = "ball pushed up, 0.5 m g"
format = "dynamic"
load-factor = 1.0
at = ["1800 mm", "0 mm", "120 mm"]
force = ["0 kN", "0 kN", "-7.65 kN"]

[[load-case]]
name = "ball pulled down, 0.5 m g"
format = "dynamic"
load-factor = 1.0
at = ["1800 mm", "0 mm", "120 mm"]
force = ["0 kN", "0 kN", "7.65 kN"]

[[load-case]]
name = "push, 1.5 m g"
format = "dynamic"
load-factor = 1.0
at = ["1800 mm", "0 mm", "120 mm"]
force = ["-19.13 kN", "0 kN", "0 kN"]

[[load-case]]
name = "sideways, 0.5 m g"
format = "dynamic"
load-factor = 1.0
force = ["13.65 kN", "6.38 kN", "0 kN"]
moment = ["0 kN*m", "0 kN*m", "3.97 kN*m"]

[[load-case]]
name = "driving, 2 million cycles"
format = "dynamic"
load-factor = 1.0
at = ["1800 mm", "0 mm", "120 mm"]
force = ["3.96 kN", "0 kN", "1.27 kN"]
cycles = 2e6
)toml";

/// Steel on both faces of a rail: double shear, a given tube between the walls, rows and columns.
inline constexpr const char* two_cheeks = R"toml(title = "Honey trailer 2.6 t: spring hanger with cheeks on both faces of the rail"
service-class = "off road"
life = "20 years"

[bolt]
size = "M16"
class = "8.8"
finish = "hot-dip galvanised, waxed"

[tightening]
method = "torque wrench, friction class B"

[pattern]
rows = 2
columns = 2
pitch-x = "160 mm"
pitch-y = "44 mm"

[[part]]
kind = "washer"
series = "ISO 7089"

[[part]]
kind = "plate"
name = "outer cheek"
material = "S355, up to 16 mm"
thickness = "8 mm"
surface = "hot-dip galvanised, sweep blasted"
outline = {x-min = "-120 mm", x-max = "120 mm", y-min = "-55 mm", y-max = "180 mm"}

[[part]]
kind = "section"
name = "rail"
material = "EN AW-6082-T6 extruded, up to 5 mm"
width = "120 mm"
height = "80 mm"
wall = "5 mm"
height-tolerance = "0.1 mm"
surface = "blasted"
tube = {arrangement = "between the walls", material = "E355+N precision tube", stock = "steel 28 x 5"}

[[part]]
kind = "plate"
name = "inner cheek"
material = "S355, up to 16 mm"
thickness = "8 mm"
surface = "hot-dip galvanised, sweep blasted"
outline = {x-min = "-120 mm", x-max = "120 mm", y-min = "-55 mm", y-max = "180 mm"}

[[part]]
kind = "washer"
series = "ISO 7089"

[temperatures]
assembly = "20 degC"
coldest = "-15 degC"
hottest = "65 degC"

[[load-case]]
name = "standing, loaded"
format = "static"
at = ["0 mm", "150 mm", "0 mm"]
force = ["0 kN", "-6 kN", "0 kN"]

[[load-case]]
name = "pothole, 2.5 g up"
format = "dynamic"
load-factor = 1.35
at = ["0 mm", "150 mm", "0 mm"]
force = ["0 kN", "-15 kN", "0 kN"]

[[load-case]]
name = "braking, 0.6 g on one axle"
format = "dynamic"
load-factor = 1.35
at = ["0 mm", "150 mm", "0 mm"]
force = ["-3.6 kN", "-7.5 kN", "0 kN"]

[[load-case]]
name = "cornering, 0.5 g outwards"
format = "dynamic"
load-factor = 1.35
at = ["0 mm", "150 mm", "0 mm"]
force = ["0 kN", "-7.5 kN", "3 kN"]

[[load-case]]
name = "driving, 2 million cycles of 0.3 g"
format = "dynamic"
load-factor = 1.0
at = ["0 mm", "150 mm", "0 mm"]
force = ["0.5 kN", "-1.8 kN", "0.4 kN"]
cycles = 2e6
)toml";

/// Tubes through the walls, two bolts in one line.
inline constexpr const char* through_tubes = R"toml(title = "Honey trailer 2.6 t: rear steady leg, tubes through the rail"
service-class = "sealed road"
life = "20 years"

[bolt]
size = "M12"
class = "8.8"
finish = "hot-dip galvanised, waxed"

[tightening]
method = "torque wrench, friction class B"

[pattern]
rows = 1
columns = 2
pitch-x = "160 mm"

[[part]]
kind = "washer"
series = "ISO 7089"

[[part]]
kind = "plate"
name = "top plate"
material = "S355, up to 16 mm"
thickness = "8 mm"
surface = "hot-dip galvanised"
outline = {x-min = "-120 mm", x-max = "120 mm", y-min = "-40 mm", y-max = "40 mm"}
side = "rail"

[[part]]
kind = "section"
name = "rail"
material = "EN AW-6082-T6 extruded, up to 5 mm"
width = "80 mm"
height = "100 mm"
wall = "5 mm"
surface = "mill finish"
x-max = "600 mm"
tube = {arrangement = "through the walls", material = "E355+N precision tube", stock = "steel 25 x 5", length = "100.4 mm"}

[[part]]
kind = "plate"
name = "foot plate"
material = "S355, up to 16 mm"
thickness = "10 mm"
surface = "hot-dip galvanised"
outline = {x-min = "-120 mm", x-max = "120 mm", y-min = "-40 mm", y-max = "40 mm"}

[[part]]
kind = "washer"
series = "ISO 7089"

[temperatures]
assembly = "20 degC"
coldest = "-15 degC"
hottest = "65 degC"

[[load-case]]
name = "standing on the leg"
format = "static"
at = ["-40 mm", "0 mm", "500 mm"]
force = ["0 kN", "0 kN", "-2.5 kN"]

[[load-case]]
name = "standing on the leg, somebody leans on the trailer"
format = "static"
at = ["-40 mm", "0 mm", "500 mm"]
force = ["0.3 kN", "0.15 kN", "-2.5 kN"]

[[load-case]]
name = "leg left down, caught by a stone"
format = "dynamic"
load-factor = 1.5
at = ["-40 mm", "0 mm", "500 mm"]
force = ["-2.2 kN", "0.15 kN", "-3 kN"]

[[load-case]]
name = "leg folded up, driving, 2 million cycles"
format = "dynamic"
load-factor = 1.0
at = ["-40 mm", "0 mm", "100 mm"]
force = ["0.15 kN", "0.05 kN", "0.2 kN"]
cycles = 2e6
)toml";

/// Plates without a section, a layer of compound between them.
inline constexpr const char* plain_plates = R"toml(title = "Honey trailer 2.6 t: bracket of the settling tank on the floor plate"
service-class = "sealed road"
life = "20 years"

[bolt]
size = "M12"
class = "8.8"
finish = "hot-dip galvanised, waxed"

[tightening]
method = "torque wrench, friction class B"

[pattern]
positions = [["-90 mm", "-60 mm"], ["90 mm", "-60 mm"], ["-90 mm", "60 mm"], ["90 mm", "60 mm"]]

[[part]]
kind = "washer"
series = "ISO 7089"

[[part]]
kind = "plate"
name = "bracket"
material = "S235, up to 16 mm"
thickness = "8 mm"
surface = "hot-dip galvanised"
outline = {x-min = "-120 mm", x-max = "120 mm", y-min = "-90 mm", y-max = "90 mm"}
side = "attached"
lever-to-web = "35 mm"

[[part]]
kind = "layer"
material = "jointing compound"

[[part]]
kind = "plate"
name = "floor plate"
material = "EN AW-6082-T6/T651 sheet and plate, 6 to 12.5 mm"
thickness = "10 mm"
surface = "mill finish"
outline = {x-min = "-140 mm", x-max = "140 mm", y-min = "-110 mm", y-max = "110 mm"}
side = "rail"

[[part]]
kind = "washer"
series = "ISO 7093-1"

[temperatures]
assembly = "20 degC"
coldest = "-15 degC"
hottest = "55 degC"

[[load-case]]
name = "full tank, standing"
format = "static"
at = ["30 mm", "0 mm", "250 mm"]
force = ["0 kN", "0 kN", "-1.2 kN"]

[[load-case]]
name = "full tank, parked on a slope"
format = "static"
at = ["30 mm", "0 mm", "250 mm"]
force = ["0.15 kN", "0 kN", "-1.19 kN"]

[[load-case]]
name = "braking, 0.7 g"
format = "dynamic"
load-factor = 1.35
at = ["30 mm", "0 mm", "250 mm"]
force = ["0.84 kN", "0 kN", "-1.2 kN"]

[[load-case]]
name = "corner and pothole, 0.5 g sideways"
format = "dynamic"
load-factor = 1.35
at = ["30 mm", "0 mm", "250 mm"]
force = ["0 kN", "0.6 kN", "-2.4 kN"]

[[load-case]]
name = "driving, 2 million cycles of 0.3 g"
format = "dynamic"
load-factor = 1.0
at = ["30 mm", "0 mm", "250 mm"]
force = ["0.2 kN", "0.15 kN", "0.36 kN"]
cycles = 2e6
)toml";

/// A small strip on a box without a tube: so little clamp that the walls stand it.
inline constexpr const char* open_box = R"toml(title = "Honey trailer 2.6 t: cable strip on the open rail (invented)"
service-class = "sealed road"
[bolt]
size = "M6"
class = "8.8"
finish = "zinc electroplate, waxed"
[tightening]
method = "torque wrench, friction class B"
torque = "3 N*m"
[pattern]
rows = 1
columns = 2
pitch-x = "60 mm"
[[part]]
kind = "washer"
series = "ISO 7093-1"
[[part]]
kind = "plate"
name = "strip"
material = "S235, up to 16 mm"
thickness = "4 mm"
surface = "hot-dip galvanised"
outline = {x-min = "-50 mm", x-max = "50 mm", y-min = "-15 mm", y-max = "15 mm"}
[[part]]
kind = "section"
name = "rail"
material = "EN AW-6082-T6 extruded, up to 5 mm"
width = "60 mm"
height = "40 mm"
wall = "4 mm"
surface = "mill finish"
tube = {arrangement = "none"}
[[part]]
kind = "washer"
series = "ISO 7093-1"
[[load-case]]
name = "cable pulled"
format = "static"
force = ["0.02 kN", "0 kN", "0.02 kN"]
)toml";

/// A joint that holds and lasts: what is offered in place of one of its parts is judged by the part.
inline constexpr const char* sound_lap = R"toml(title = "Honey trailer 2.6 t: drawbar leg lapped under the box rail"
service-class = "off road"
life = "20 years"

[bolt]
size = "M16"
class = "8.8"
finish = "hot-dip galvanised, waxed"

[tightening]
method = "torque wrench, friction class B"

[pattern]
positions = [
    ["-480 mm", "0 mm"], ["-400 mm", "0 mm"], ["-320 mm", "0 mm"], ["-240 mm", "0 mm"],
    ["240 mm", "0 mm"], ["320 mm", "0 mm"], ["400 mm", "0 mm"], ["480 mm", "0 mm"],
]

[[part]]
kind = "washer"
series = "ISO 7089"

[[part]]
kind = "plate"
name = "drawbar"
material = "S355, up to 16 mm"
thickness = "10 mm"
surface = "hot-dip galvanised, sweep blasted"
outline = {x-min = "-530 mm", y-min = "-40 mm", y-max = "40 mm"}

[[part]]
kind = "section"
name = "rail"
material = "EN AW-6082-T6 extruded, 5 to 15 mm"
width = "100 mm"
height = "160 mm"
wall = "8 mm"
height-tolerance = "0.2 mm"
surface = "blasted"
x-max = "540 mm"
tube = {arrangement = "between the walls", material = "E355+N precision tube", coating = "ISO 1461, over 3 to 6 mm"}

[[part]]
kind = "washer"
series = "ISO 7089"

[temperatures]
assembly = "20 degC"
coldest = "-15 degC"
hottest = "65 degC"

[corrosion]
exposures = ["inland farm", "inland town"]
edges = "edges sealed"

[[load-case]]
name = "standing, nose load"
format = "static"
at = ["1800 mm", "0 mm", "120 mm"]
force = ["0 kN", "0 kN", "-1.53 kN"]

[[load-case]]
name = "ball pushed up, 0.5 m g"
format = "dynamic"
load-factor = 1.0
at = ["1800 mm", "0 mm", "120 mm"]
force = ["0 kN", "0 kN", "-7.65 kN"]

[[load-case]]
name = "ball pulled down, 0.5 m g"
format = "dynamic"
load-factor = 1.0
at = ["1800 mm", "0 mm", "120 mm"]
force = ["0 kN", "0 kN", "7.65 kN"]

[[load-case]]
name = "push, 1.5 m g"
format = "dynamic"
load-factor = 1.0
at = ["1800 mm", "0 mm", "120 mm"]
force = ["-19.13 kN", "0 kN", "0 kN"]

[[load-case]]
name = "sideways, 0.5 m g"
format = "dynamic"
load-factor = 1.0
force = ["14.34 kN", "6.38 kN", "1.39 kN"]
moment = ["0 kN*m", "0 kN*m", "3.59 kN*m"]

[[load-case]]
name = "driving, 2 million cycles, forward and down"
format = "dynamic"
load-factor = 1.0
at = ["1800 mm", "0 mm", "120 mm"]
force = ["3.96 kN", "0 kN", "1.27 kN"]
cycles = 2e6

[[load-case]]
name = "driving, 2 million cycles, forward and up"
format = "dynamic"
load-factor = 1.0
at = ["1800 mm", "0 mm", "120 mm"]
force = ["3.96 kN", "0 kN", "-1.27 kN"]
cycles = 2e6
)toml";

}  // namespace joint_tests
