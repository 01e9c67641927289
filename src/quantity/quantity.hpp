// SPDX-License-Identifier: MIT
#pragma once

#include <boost/units/absolute.hpp>
#include <boost/units/cmath.hpp>
#include <boost/units/dimension.hpp>
#include <boost/units/get_dimension.hpp>
#include <boost/units/pow.hpp>
#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/acceleration.hpp>
#include <boost/units/systems/si/amount.hpp>
#include <boost/units/systems/si/area.hpp>
#include <boost/units/systems/si/base.hpp>
#include <boost/units/systems/si/current.hpp>
#include <boost/units/systems/si/dimensionless.hpp>
#include <boost/units/systems/si/electric_charge.hpp>
#include <boost/units/systems/si/electric_potential.hpp>
#include <boost/units/systems/si/energy.hpp>
#include <boost/units/systems/si/force.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/mass.hpp>
#include <boost/units/systems/si/mass_density.hpp>
#include <boost/units/systems/si/plane_angle.hpp>
#include <boost/units/systems/si/pressure.hpp>
#include <boost/units/systems/si/resistance.hpp>
#include <boost/units/systems/si/surface_tension.hpp>
#include <boost/units/systems/si/temperature.hpp>
#include <boost/units/systems/si/time.hpp>
#include <boost/units/systems/si/velocity.hpp>
#include <boost/units/systems/si/volume.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

/// Typed physical quantities. A dimensioned value is one of these types from the reader to the
/// printer; `double` is only ever a true ratio. Stored in SI base units.
namespace faywright {

namespace detail {
namespace bu = boost::units;
template <class Dimension, long N>
using Power = bu::unit<typename bu::static_power<Dimension, bu::static_rational<N>>::type, bu::si::system>;
template <class Dimension>
using Inverse = Power<Dimension, -1>;
}  // namespace detail

using Length = boost::units::quantity<boost::units::si::length>;
using Area = boost::units::quantity<boost::units::si::area>;
/// Volume, and the section modulus of a bar.
using Volume = boost::units::quantity<boost::units::si::volume>;
using SecondMoment = boost::units::quantity<detail::Power<boost::units::length_dimension, 4>>;
using Force = boost::units::quantity<boost::units::si::force>;
/// Force times lever arm: torque and bending moment (not the library's torque per radian).
using Moment = boost::units::quantity<boost::units::si::energy>;
using Stress = boost::units::quantity<boost::units::si::pressure>;
/// Axial stiffness, force per length.
using Stiffness = boost::units::quantity<boost::units::si::surface_tension>;
/// Axial resilience, length per force.
using Resilience = boost::units::quantity<detail::Inverse<boost::units::surface_tension_dimension>>;
using Mass = boost::units::quantity<boost::units::si::mass>;
using Density = boost::units::quantity<boost::units::si::mass_density>;
using Duration = boost::units::quantity<boost::units::si::time>;
using Speed = boost::units::quantity<boost::units::si::velocity>;
using Acceleration = boost::units::quantity<boost::units::si::acceleration>;
/// Per time squared; the radian is no unit here, so that inertia times it is a moment.
using AngularAcceleration = boost::units::quantity<detail::Power<boost::units::time_dimension, -2>>;
using Angle = boost::units::quantity<boost::units::si::plane_angle>;
/// A point on the temperature scale. Two points subtract to a difference; they do not add.
using Temperature = boost::units::quantity<boost::units::absolute<boost::units::si::temperature>>;
using TemperatureDifference = boost::units::quantity<boost::units::si::temperature>;
/// Coefficient of linear thermal expansion.
using Expansion = boost::units::quantity<detail::Inverse<boost::units::temperature_dimension>>;

using Current = boost::units::quantity<boost::units::si::current>;
/// Against one stated reference electrode.
using Potential = boost::units::quantity<boost::units::si::electric_potential>;
using Resistance = boost::units::quantity<boost::units::si::resistance>;
/// Current per area of electrode.
using CurrentDensity = decltype(Current{} / Area{});
/// Current per length of a joint line.
using LineCurrent = decltype(Current{} / Length{});
/// Of an electrolyte: the inverse of its resistivity.
using Conductivity = decltype(1.0 / (Resistance{} * Length{}));
/// Polarisation resistance: of an electrode's surface, resistance times area.
using SurfaceResistance = decltype(Resistance{} * Area{});
using Charge = boost::units::quantity<boost::units::si::electric_charge>;
using Amount = boost::units::quantity<boost::units::si::amount>;
using MolarMass = decltype(Mass{} / Amount{});
using MolarCharge = decltype(Charge{} / Amount{});
using Concentration = decltype(Amount{} / Volume{});
using Diffusivity = decltype(Area{} / Duration{});
/// Mass on an area: of a coating, or lost from a surface.
using ArealMass = decltype(Mass{} / Area{});
/// What settles on a surface: mass per area and time.
using Deposition = decltype(Mass{} / Area{} / Duration{});

inline Length metre(double v) { return v * boost::units::si::metre; }
inline Length mm(double v) { return metre(v * 1e-3); }
inline Length um(double v) { return metre(v * 1e-6); }
inline Area mm2(double v) { return v * 1e-6 * boost::units::si::square_metre; }
inline Volume mm3(double v) { return v * 1e-9 * boost::units::si::cubic_metre; }
inline SecondMoment mm4(double v) { return SecondMoment::from_value(v * 1e-12); }
inline Force newton(double v) { return v * boost::units::si::newton; }
inline Force kN(double v) { return newton(v * 1e3); }
inline Moment Nm(double v) { return v * boost::units::si::joule; }
inline Moment kNm(double v) { return Nm(v * 1e3); }
inline Stress MPa(double v) { return v * 1e6 * boost::units::si::pascal; }
inline Stress GPa(double v) { return MPa(v * 1e3); }
inline Stiffness N_per_mm(double v) { return Stiffness::from_value(v * 1e3); }
inline Resilience mm_per_N(double v) { return Resilience::from_value(v * 1e-3); }
inline Mass kg(double v) { return v * boost::units::si::kilogram; }
inline Density kg_per_m3(double v) { return Density::from_value(v); }
inline Duration seconds(double v) { return v * boost::units::si::second; }
inline Duration hours(double v) { return seconds(v * 3600.0); }
/// A year of 365.25 days.
inline Duration years(double v) { return seconds(v * 31557600.0); }
inline Speed m_per_s(double v) { return v * boost::units::si::metre_per_second; }
inline Acceleration m_per_s2(double v) { return v * boost::units::si::metre_per_second_squared; }
inline AngularAcceleration per_s2(double v) { return AngularAcceleration::from_value(v); }
inline Angle radians(double v) { return v * boost::units::si::radian; }
inline Angle degrees(double v) { return radians(v * std::numbers::pi / 180.0); }
inline TemperatureDifference kelvin(double v) { return v * boost::units::si::kelvin; }
inline Temperature degC(double v) { return Temperature::from_value(v + 273.15); }
inline Expansion per_K(double v) { return Expansion::from_value(v); }
/// A rate of attack, in micrometres a year; to the last bit what reading "1 um/a" gives, so that a bound in help is accepted.
inline Speed um_per_a(double v) { return m_per_s(v * (1e-6 * (1.0 / 31557600.0))); }
inline Current ampere(double v) { return v * boost::units::si::ampere; }
inline Potential volt(double v) { return v * boost::units::si::volt; }
inline Resistance ohm(double v) { return v * boost::units::si::ohm; }
inline CurrentDensity uA_per_cm2(double v) { return CurrentDensity::from_value(v * 1e-2); }
inline LineCurrent uA_per_cm(double v) { return LineCurrent::from_value(v * 1e-4); }
inline Conductivity S_per_cm(double v) { return Conductivity::from_value(v * 1e2); }
inline SurfaceResistance ohm_cm2(double v) { return SurfaceResistance::from_value(v * 1e-4); }
inline MolarMass g_per_mol(double v) { return MolarMass::from_value(v * 1e-3); }
inline MolarCharge C_per_mol(double v) { return MolarCharge::from_value(v); }
inline Concentration mol_per_L(double v) { return Concentration::from_value(v * 1e3); }
inline Diffusivity cm2_per_s(double v) { return Diffusivity::from_value(v * 1e-4); }
inline ArealMass g_per_m2(double v) { return ArealMass::from_value(v * 1e-3); }
/// Milligrams on a square metre a day; to the last bit what reading "1 mg/m2/d" gives.
inline Deposition mg_per_m2_d(double v) { return Deposition::from_value(v * (1e-6 * (1.0 / 86400.0))); }

inline double in_mm(Length q) { return q.value() * 1e3; }
inline double in_um(Length q) { return q.value() * 1e6; }
inline double in_mm2(Area q) { return q.value() * 1e6; }
inline double in_mm3(Volume q) { return q.value() * 1e9; }
inline double in_mm4(SecondMoment q) { return q.value() * 1e12; }
inline double in_N(Force q) { return q.value(); }
inline double in_kN(Force q) { return q.value() * 1e-3; }
inline double in_Nm(Moment q) { return q.value(); }
inline double in_kNm(Moment q) { return q.value() * 1e-3; }
inline double in_MPa(Stress q) { return q.value() * 1e-6; }
inline double in_GPa(Stress q) { return q.value() * 1e-9; }
inline double in_N_per_mm(Stiffness q) { return q.value() * 1e-3; }
inline double in_mm_per_N(Resilience q) { return q.value() * 1e3; }
inline double in_kg(Mass q) { return q.value(); }
inline double in_years(Duration q) { return q.value() / 31557600.0; }
inline double in_degrees(Angle q) { return q.value() * 180.0 / std::numbers::pi; }
inline double in_K(TemperatureDifference q) { return q.value(); }
inline double in_degC(Temperature q) { return q.value() - 273.15; }
inline double in_um_per_a(Speed q) { return static_cast<double>(q / um_per_a(1)); }
inline double in_uA(Current q) { return q.value() * 1e6; }
inline double in_V(Potential q) { return q.value(); }
inline double in_uA_per_cm2(CurrentDensity q) { return q.value() * 1e2; }
inline double in_uA_per_cm(LineCurrent q) { return q.value() * 1e4; }
inline double in_g_per_m2(ArealMass q) { return q.value() * 1e3; }
inline double in_mg_per_m2_d(Deposition q) { return static_cast<double>(q / mg_per_m2_d(1)); }
inline double in_mol_per_L(Concentration q) { return q.value() * 1e-3; }

inline constexpr double pi = std::numbers::pi;

/// The powers formulas use, for ratios and quantities alike.
inline auto squared(const auto& x) { return x * x; }
inline auto cubed(const auto& x) { return x * x * x; }

using std::max;
using std::min;

}  // namespace faywright
