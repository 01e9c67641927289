// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Clamp force through life: a staged budget from the assembled band to the last day.
///
/// Our simple model. Embedding takes F_Z; then zinc or paint takes the share c_c and soft layers the share c_l of what is left: this
/// early loss L is over by the first service. Re-tightening then restores the assembled band, and of L only the share r comes again
/// (the faces are bedded in by then). Temperature adds its change with its sign. At the end the service load relieves the coldest or
/// hottest clamp by F_PA for the least value; the greatest is the unloaded one. Least and greatest start from the least and
/// greatest assembled preload with the same losses. No clamp is below zero: a joint cannot push.
struct ClampLife {
    static constexpr Formula formula{.name = "clamp-life",
                                     .title = "Clamp force through the life of the joint",
                                     .range = "losses independent and each less than the whole preload; no self-loosening",
                                     .source = {"faywright method", "1", "section 6, staged budget", Basis::practice}};

    struct Inputs {
        Force assembled_least, assembled_greatest;
        Force embedding_loss;
        double coating_creep = 0.0, layer_creep = 0.0;
        bool retightened = false;
        double later_share = 0.3;
        Force cold_change = newton(0), hot_change = newton(0);
        Force load_relief = newton(0);

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"assembled-least", "F_0", "least preload after tightening"}, self.assembled_least, Range{newton(1), kN(10000)});
            field(Name{"assembled-greatest", "G_0", "greatest preload after tightening"}, self.assembled_greatest,
                  Range{newton(1), kN(10000)});
            field(Name{"embedding-loss", "F_Z", "preload lost by embedding"}, self.embedding_loss, Range{newton(0), kN(10000)});
            field(Name{"coating-creep", "c_c", "share lost by creep of coatings"}, self.coating_creep, Range{0.0, 1.0}, defaulted);
            field(Name{"layer-creep", "c_l", "share lost by creep of layers"}, self.layer_creep, Range{0.0, 1.0}, defaulted);
            field(Name{"retightened", "", "whether the bolt is re-tightened at the first service"}, self.retightened, defaulted);
            field(Name{"later-share", "r", "share of the early loss that comes again after re-tightening"}, self.later_share,
                  Range{0.0, 1.0}, defaulted);
            field(Name{"cold-change", "dF_c", "change of preload when cold"}, self.cold_change, Range{kN(-10000), kN(10000)}, defaulted);
            field(Name{"hot-change", "dF_h", "change of preload when hot"}, self.hot_change, Range{kN(-10000), kN(10000)}, defaulted);
            field(Name{"load-relief", "F_PA", "clamp taken by the service load"}, self.load_relief, Range{newton(0), kN(10000)}, defaulted);
        }
    };

    struct Answer {
        Force assembled_least, assembled_greatest;
        Force embedded_least, embedded_greatest;
        Force crept_least, crept_greatest;              ///< at the first service
        Force retightened_least, retightened_greatest;  ///< the same as crept where the bolt is left alone
        Force settled_least, settled_greatest;          ///< after the later losses
        Force cold_least, cold_greatest;
        Force hot_least, hot_greatest;
        Force end_least, end_greatest;  ///< at the end of life, under load for the least
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"assembled-least", "F_0", "least clamp after tightening"}, self.assembled_least);
            field(Name{"assembled-greatest", "G_0", "greatest clamp after tightening"}, self.assembled_greatest);
            field(Name{"embedded-least", "F_1", "least clamp after embedding"}, self.embedded_least);
            field(Name{"embedded-greatest", "G_1", "greatest clamp after embedding"}, self.embedded_greatest);
            field(Name{"crept-least", "F_2", "least clamp after creep"}, self.crept_least);
            field(Name{"crept-greatest", "G_2", "greatest clamp after creep"}, self.crept_greatest);
            field(Name{"retightened-least", "F_3", "least clamp after the first service"}, self.retightened_least);
            field(Name{"retightened-greatest", "G_3", "greatest clamp after the first service"}, self.retightened_greatest);
            field(Name{"settled-least", "F_4", "least clamp after the later losses"}, self.settled_least);
            field(Name{"settled-greatest", "G_4", "greatest clamp after the later losses"}, self.settled_greatest);
            field(Name{"cold-least", "F_5", "least clamp when cold"}, self.cold_least);
            field(Name{"cold-greatest", "G_5", "greatest clamp when cold"}, self.cold_greatest);
            field(Name{"hot-least", "F_6", "least clamp when hot"}, self.hot_least);
            field(Name{"hot-greatest", "G_6", "greatest clamp when hot"}, self.hot_greatest);
            field(Name{"end-least", "F_7", "least clamp at the end of life under load"}, self.end_least);
            field(Name{"end-greatest", "G_7", "greatest clamp at the end of life"}, self.end_greatest);
        }
    };

    static const char* refusal(const Inputs& in) {
        return in.assembled_least > in.assembled_greatest ? "the least preload is above the greatest" : nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [F_0, G_0, F_Z, c_c, c_l, again, r, dF_c, dF_h, F_PA] = in;
        FAYWRIGHT_STEP(F_1, max(F_0 - F_Z, newton(0)));
        FAYWRIGHT_STEP(G_1, max(G_0 - F_Z, newton(0)));
        FAYWRIGHT_STEP(F_2, F_1 * (1.0 - c_c) * (1.0 - c_l));
        FAYWRIGHT_STEP(G_2, G_1 * (1.0 - c_c) * (1.0 - c_l));
        if (again) {
            FAYWRIGHT_STEP(F_3, F_0);
            FAYWRIGHT_STEP(G_3, G_0);
            FAYWRIGHT_STEP(F_4, F_3 - r * (F_0 - F_2));
            FAYWRIGHT_STEP(G_4, G_3 - r * (G_0 - G_2));
            return finish(in, F_1, G_1, F_2, G_2, F_3, G_3, F_4, G_4, steps);
        }
        FAYWRIGHT_STEP(F_3, F_2);
        FAYWRIGHT_STEP(G_3, G_2);
        FAYWRIGHT_STEP(F_4, F_3);
        FAYWRIGHT_STEP(G_4, G_3);
        return finish(in, F_1, G_1, F_2, G_2, F_3, G_3, F_4, G_4, steps);
    }

private:
    template <class Steps>
    static Answer finish(const Inputs& in, Force F_1, Force G_1, Force F_2, Force G_2, Force F_3, Force G_3, Force F_4, Force G_4,
                         Steps&& steps) {
        const auto& [F_0, G_0, F_Z, c_c, c_l, again, r, dF_c, dF_h, F_PA] = in;
        FAYWRIGHT_STEP(F_5, max(F_4 + dF_c, newton(0)));
        FAYWRIGHT_STEP(G_5, max(G_4 + dF_c, newton(0)));
        FAYWRIGHT_STEP(F_6, max(F_4 + dF_h, newton(0)));
        FAYWRIGHT_STEP(G_6, max(G_4 + dF_h, newton(0)));
        FAYWRIGHT_STEP(F_7, max(min(F_4, min(F_5, F_6)) - F_PA, newton(0)));
        FAYWRIGHT_STEP(G_7, max(G_4, max(G_5, G_6)));
        return {F_0, G_0, F_1, G_1, F_2, G_2, F_3, G_3, F_4, G_4, F_5, G_5, F_6, G_6, F_7, G_7};
    }
};

}  // namespace faywright
