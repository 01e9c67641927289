// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/quantity.hpp"

#include <span>
#include <string>

/// Forces at places in space, and what is left of them when they should balance.
namespace faywright {

/// Three components along right-handed axes.
template <class Q>
struct Triple {
    Q x{}, y{}, z{};

    friend Triple operator+(const Triple& a, const Triple& b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
    friend Triple operator-(const Triple& a, const Triple& b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
    friend Triple operator-(const Triple& a) { return {-a.x, -a.y, -a.z}; }
    friend Triple operator*(const Triple& a, double factor) { return {a.x * factor, a.y * factor, a.z * factor}; }
    friend bool operator==(const Triple&, const Triple&) = default;
};
using Point = Triple<Length>;
using Force3 = Triple<Force>;
using Moment3 = Triple<Moment>;

template <class Q>
[[nodiscard]] Q magnitude(const Triple<Q>& v) {
    return sqrt(squared(v.x) + squared(v.y) + squared(v.z));
}

/// Moment about the origin of a force at `at`.
[[nodiscard]] inline Moment3 moment_of(const Point& at, const Force3& force) {
    return {at.y * force.z - at.z * force.y, at.z * force.x - at.x * force.z, at.x * force.y - at.y * force.x};
}

/// A force and a free moment on a body, at a named place.
struct PlacedForce {
    std::string name;
    Point at;
    Force3 force;
    Moment3 moment{};
};

/// Force and moment about one point.
struct Wrench {
    Force3 force;
    Moment3 moment;
};

/// Sum of all forces, and of their moments about `about`.
[[nodiscard]] inline Wrench resultant(std::span<const PlacedForce> forces, const Point& about = {}) {
    Wrench sum{};
    for (const auto& each : forces) {
        sum.force = sum.force + each.force;
        sum.moment = sum.moment + each.moment + moment_of(each.at - about, each.force);
    }
    return sum;
}

}  // namespace faywright
