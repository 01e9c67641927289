// SPDX-License-Identifier: MIT
#pragma once

#include "corrosion/atmosphere_metal.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <array>
#include <cmath>
#include <cstddef>
#include <string_view>

namespace faywright {

/// Scatter of a dose-response estimate: standard deviation of ln r about it. The stated intervals of ISO 9223, -33 % to +50 % and
/// for aluminium -50 % to +100 %, are taken as one of it: they hold about two places in three and are no bound.
[[nodiscard]] inline double first_year_scatter(AtmosphereMetal metal) {
    return metal == AtmosphereMetal::aluminium ? std::log(2.0) : std::log(1.5);
}

namespace detail {

/// One sentence for every set of inputs outside the range that the functions were fitted to; bit i stands for part i.
struct OutsideFit {
    static constexpr std::array<std::string_view, 4> parts{" T -17.1 to 28.7 degC;", " RH 34 to 93 %;", " SO2 up to 150.4 mg/m2/d;",
                                                           " chloride up to 760.5 mg/m2/d;"};
    static constexpr std::string_view head = "fitted only within", tail = " the standard warns against going beyond, by the sea above all";
    std::array<std::array<char, 224>, 16> sentences{};

    constexpr OutsideFit() {
        for (std::size_t set = 1; set < sentences.size(); ++set) {
            std::size_t at = 0;
            const auto add = [&](std::string_view text) {
                for (const char c : text) sentences[set][at++] = c;
            };
            add(head);
            for (std::size_t part = 0; part < parts.size(); ++part)
                if ((set >> part & 1U) != 0) add(parts[part]);
            add(tail);
        }
    }
};
inline constexpr OutsideFit outside_fit{};

}  // namespace detail

/// First-year loss: dose-response functions of ISO 9223 for four metals, from yearly means.
///
/// r = A P_d^b exp(c RH + f) + B S_d^g exp(h RH + k T): one term of sulfur dioxide, whose f turns at 10 degC, one of chloride, in um/a
/// with T in degC, RH in %, P_d and S_d in mg/(m2 d). Depositions below those of the fit, 0.7 and 0.4, are taken as these. The
/// estimate scatters (`first_year_scatter`): low and high are one standard deviation, the bound two, which about 97.5 % stay below.
/// Chloride by wet candle and by dry plate differ by a factor (`as_wet_candle`): tell which.
struct FirstYearLoss {
    static constexpr Formula formula{
        .name = "first-year-loss",
        .title = "First-year loss of a metal from temperature, humidity, SO2 and chloride",
        .range =
            "open exposure washed by rain; yearly means of -17.1 to 28.7 degC, 34 to 93 % humidity, up to 150.4 mg/m2/d SO2 and 760.5 "
            "mg/m2/d chloride; not for sheltered, wetted or crevice surfaces",
        .source = {"ISO 9223", "2012", "clause 8, equations 1 to 4; Table 3; Annex A", Basis::memory}};

    struct Inputs {
        AtmosphereMetal metal = AtmosphereMetal::zinc;
        Temperature temperature;
        double humidity;
        Deposition sulfur_dioxide, chloride;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"metal", "", "metal exposed"}, self.metal, defaulted);
            field(Name{"temperature", "theta", "mean temperature of the year"}, self.temperature, Range{degC(-60), degC(60)});
            field(Name{"humidity", "phi", "mean relative humidity of the year, such as \"75 %\""}, self.humidity, Range{0.0, 1.0});
            field(Name{"sulfur-dioxide", "P", "deposition of sulfur dioxide, mean of the year"}, self.sulfur_dioxide,
                  Range{mg_per_m2_d(0), mg_per_m2_d(1000)});
            field(Name{"chloride", "S", "deposition of chloride, mean of the year"}, self.chloride,
                  Range{mg_per_m2_d(0), mg_per_m2_d(10000)});
        }
    };

    struct Answer {
        Speed rate;
        Speed low, high;  ///< one standard deviation of ln r: the standard's interval, about two places in three
        Speed bound;      ///< two above: about 97.5 % stay below
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"rate", "r_corr", "estimate of the loss in the first year"}, self.rate);
            field(Name{"low", "r_low", "one standard deviation below"}, self.low);
            field(Name{"high", "r_high", "one standard deviation above: about one place in six lies beyond"}, self.high);
            field(Name{"bound", "r_bound", "two standard deviations above: about one place in forty lies beyond"}, self.bound);
        }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [metal, theta, phi, P, S] = in;
        FAYWRIGHT_STEP(T, (theta - degC(0)) / kelvin(1));
        FAYWRIGHT_STEP(RH, 100.0 * phi);
        FAYWRIGHT_STEP(P_1, P / mg_per_m2_d(1));
        FAYWRIGHT_STEP(S_1, S / mg_per_m2_d(1));
        FAYWRIGHT_STEP(P_d, max(P_1, 0.7));
        FAYWRIGHT_STEP(S_d, max(S_1, 0.4));
        const auto beyond = [](double value, double least, double most) { return value < least - 1e-9 || value > most + 1e-9; };
        const std::size_t outside = (beyond(T, -17.1, 28.7) ? 1U : 0U) | (beyond(RH, 34.0, 93.0) ? 2U : 0U) |
                                    (beyond(P_d, 0.7, 150.4) ? 4U : 0U) | (beyond(S_d, 0.4, 760.5) ? 8U : 0U);
        const auto told = [&](double by_sulfur_dioxide, double by_chloride) {
            Answer answer = with_scatter(in.metal, by_sulfur_dioxide, by_chloride, steps);
            if (outside != 0) answer.outside_range = detail::outside_fit.sentences[outside].data();
            return answer;
        };
        // The lesser of the two lines is the one of its side of 10 degC.
        switch (metal) {
            case AtmosphereMetal::carbon_steel: {
                FAYWRIGHT_STEP(f_St, min(0.150 * (T - 10.0), -0.054 * (T - 10.0)));
                FAYWRIGHT_STEP(r_S, 1.77 * std::pow(P_d, 0.52) * std::exp(0.020 * RH + f_St));
                FAYWRIGHT_STEP(r_Cl, 0.102 * std::pow(S_d, 0.62) * std::exp(0.033 * RH + 0.040 * T));
                return told(r_S, r_Cl);
            }
            case AtmosphereMetal::zinc: {
                FAYWRIGHT_STEP(f_Zn, min(0.038 * (T - 10.0), -0.071 * (T - 10.0)));
                FAYWRIGHT_STEP(r_S, 0.0129 * std::pow(P_d, 0.44) * std::exp(0.046 * RH + f_Zn));
                FAYWRIGHT_STEP(r_Cl, 0.0175 * std::pow(S_d, 0.57) * std::exp(0.008 * RH + 0.085 * T));
                return told(r_S, r_Cl);
            }
            case AtmosphereMetal::copper: {
                FAYWRIGHT_STEP(f_Cu, min(0.126 * (T - 10.0), -0.080 * (T - 10.0)));
                FAYWRIGHT_STEP(r_S, 0.0053 * std::pow(P_d, 0.26) * std::exp(0.059 * RH + f_Cu));
                FAYWRIGHT_STEP(r_Cl, 0.01025 * std::pow(S_d, 0.27) * std::exp(0.036 * RH + 0.049 * T));
                return told(r_S, r_Cl);
            }
            case AtmosphereMetal::aluminium: {
                FAYWRIGHT_STEP(f_Al, min(0.009 * (T - 10.0), -0.043 * (T - 10.0)));
                FAYWRIGHT_STEP(r_S, 0.0042 * std::pow(P_d, 0.73) * std::exp(0.025 * RH + f_Al));
                FAYWRIGHT_STEP(r_Cl, 0.0018 * std::pow(S_d, 0.60) * std::exp(0.020 * RH + 0.094 * T));
                return told(r_S, r_Cl);
            }
        }
        return {};
    }

private:
    template <class Steps>
    static Answer with_scatter(AtmosphereMetal metal, double r_S, double r_Cl, Steps& steps) {
        FAYWRIGHT_STEP(r_corr, (r_S + r_Cl) * um_per_a(1));
        FAYWRIGHT_STATED(s, "scatter of ln r: ln 1.5, of aluminium ln 2", first_year_scatter(metal));
        FAYWRIGHT_STEP(r_low, r_corr * std::exp(-s));
        FAYWRIGHT_STEP(r_high, r_corr * std::exp(s));
        FAYWRIGHT_STEP(r_bound, r_corr * std::exp(2.0 * s));
        return {r_corr, r_low, r_high, r_bound};
    }
};

}  // namespace faywright
