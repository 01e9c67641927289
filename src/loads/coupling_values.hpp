// SPDX-License-Identifier: MIT
#pragma once

#include "loads/trailer_body.hpp"
#include "quantity/field.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <optional>

namespace faywright {

/// The characteristic values by which couplings and drawbars are approved: D, D_c and V.
///
/// D is the force that gives two masses T and R a relative acceleration of 1 g. D_c counts for centre-axle trailers, with the load C on the
/// axles in place of R. V is the amplitude of the vertical force, defined for centre-axle trailers of more than 3.5 t only; below it
/// serves for comparison.
struct CouplingValues {
    static constexpr Formula formula{
        .name = "coupling-values",
        .title = "Coupling values D, D_c and V of a towing vehicle and its trailer",
        .range = "D_c for centre-axle trailers; V for centre-axle trailers above 3.5 t, below for comparison only",
        .source = {"UN Regulation 55", "01 series", "definitions of D, D_c and V", Basis::memory}};

    /// Whether V is asked of a trailer of this greatest mass.
    static bool V_counts(Mass trailer) { return trailer > kg(3500); }

    struct Inputs {
        Mass towing_vehicle, trailer;
        std::optional<Mass> on_axles, on_fifth_wheel;
        std::optional<Length> body_length, drawbar_length;
        Acceleration reference = m_per_s2(2.4);

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            const Range mass{kg(50), kg(100000)};
            field(Name{"towing-vehicle", "T", "greatest mass of the towing vehicle"}, self.towing_vehicle, mass);
            field(Name{"trailer", "R", "greatest mass of the trailer"}, self.trailer, mass);
            field(Name{"on-axles", "C", "mass on the trailer's axles; absent: no D_c and no V"}, self.on_axles, mass);
            field(Name{"on-fifth-wheel", "U", "vertical mass on a fifth wheel, for a semi-trailer"}, self.on_fifth_wheel, mass);
            field(Name{"body-length", "X", "length of the load area"}, self.body_length, Range{mm(100), mm(20000)});
            field(Name{"drawbar-length", "L", "coupling to the middle of the axle group"}, self.drawbar_length, Range{mm(100), mm(20000)});
            field(Name{"reference-acceleration", "a", "1.8 m/s2 with air suspension on the towing vehicle, else 2.4 m/s2"}, self.reference,
                  Range{m_per_s2(0.1), m_per_s2(20)}, defaulted);
        }
    };

    struct Answer {
        Force D;
        std::optional<Force> D_c, V;
        std::optional<double> length_ratio;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"d-value", "D", "horizontal reference force"}, self.D);
            field(Name{"dc-value", "D_c", "horizontal reference force, centre-axle trailer"}, self.D_c);
            field(Name{"v-value", "V", "amplitude of the vertical force"}, self.V);
            field(Name{"length-ratio", "X2_L2", "X²/L², not below 1"}, self.length_ratio);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.on_axles && *in.on_axles > in.trailer) return "more mass stands on the axles than the trailer has";
        if (in.on_fifth_wheel && *in.on_fifth_wheel >= in.trailer) return "no less mass stands on the fifth wheel than the trailer has";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [T, R, C, U, X, L, a] = in;
        Answer answer{};
        if (U) {
            FAYWRIGHT_STATED(D, "9.81 m/s2 · 0.6·T·R/(T + R - U)", 0.6 * (gravity * T) * (R / (T + R - *U)));
            answer.D = D;
        } else {
            FAYWRIGHT_STATED(D, "9.81 m/s2 · T·R/(T + R)", gravity * T * (R / (T + R)));
            answer.D = D;
        }
        if (!C) return answer;
        FAYWRIGHT_STATED(D_c, "9.81 m/s2 · T·C/(T + C)", gravity * T * (*C / (T + *C)));
        answer.D_c = D_c;
        if (!X || !L) return answer;
        FAYWRIGHT_STATED(X2_L2, "X²/L², not below 1", max(1.0, double(squared(*X) / squared(*L))));
        FAYWRIGHT_STEP(V, a * *C * X2_L2);
        answer.length_ratio = X2_L2;
        answer.V = V;
        if (!V_counts(R)) answer.outside_range = "V counts for centre-axle trailers above 3.5 t; here it serves for comparison only";
        return answer;
    }
};

}  // namespace faywright
