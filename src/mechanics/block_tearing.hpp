// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/design_method.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <optional>

namespace faywright {

/// How evenly the net face of a block is pulled.
enum class BlockPull { concentric, eccentric };

template <>
struct Words<BlockPull> {
    static constexpr std::array<std::pair<BlockPull, std::string_view>, 2> all{
        {{BlockPull::concentric, "concentric"}, {BlockPull::eccentric, "eccentric"}}};
};

/// Block tearing: a group of bolts pulls out a block, torn on one face and sheared on the faces along the force.
///
/// EN 1993-1-8: f_u A_nt/γ_M2 + (f_y/√3) A_nv/γ_M0, EN 1999-1-1 with γ_M1 on the shear term; eccentric pull counts half of
/// the torn face. Under the American and Australian methods the form of AISC 360 J4.3 serves: 0.75 times
/// 0.6 f_u A_nv + U f_u A_nt, at most 0.6 f_y A_gv + U f_u A_nt, U 1 or 0.5.
struct BlockTearing {
    static constexpr Formula formula{.name = "block-tearing",
                                     .title = "Block tearing resistance of a bolt group",
                                     .range = "one torn face, sheared faces along the force",
                                     .source = {"EN 1993-1-8", "2005", "3.10.2", Basis::published}};

    /// In the order of DesignMethod.
    static constexpr std::array<Source, 4> sources{{formula.source, Source{"EN 1999-1-1", "2007", "8.5.2.2", Basis::memory},
                                                    Source{"AISC 360", "2016", "J4.3", Basis::memory},
                                                    Source{"AISC 360", "2016", "J4.3", Basis::memory}}};
    static constexpr const Source& source(DesignMethod method) { return sources[static_cast<std::size_t>(method)]; }

    struct Inputs {
        Area net_tension_area, net_shear_area;
        std::optional<Area> gross_shear_area;
        Stress yield_strength, ultimate_strength;
        BlockPull pull = BlockPull::concentric;
        double gamma_M0 = 1.0, gamma_M1 = 1.10, gamma_M2 = 1.25;
        DesignMethod method = DesignMethod::en_1999;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"net-tension-area", "A_nt", "net area of the torn face"}, self.net_tension_area, Range{mm2(0.1), mm2(1e7)});
            field(Name{"net-shear-area", "A_nv", "net area of the sheared faces"}, self.net_shear_area, Range{mm2(0.1), mm2(1e7)});
            field(Name{"gross-shear-area", "A_gv", "gross area of the sheared faces (American form only)"}, self.gross_shear_area,
                  Range{mm2(0.1), mm2(1e7)});
            field(Name{"yield-strength", "f_y", "yield or 0.2 % proof strength"}, self.yield_strength, Range{MPa(10), MPa(2000)});
            field(Name{"ultimate-strength", "f_u", "ultimate strength"}, self.ultimate_strength, Range{MPa(10), MPa(2000)});
            field(Name{"pull", "", "how evenly the torn face is pulled"}, self.pull, defaulted);
            field(Name{"gamma-M0", "gamma_M0", "partial factor on yield of steel"}, self.gamma_M0, Range{1.0, 3.0}, defaulted);
            field(Name{"gamma-M1", "gamma_M1", "partial factor on proof strength of aluminium"}, self.gamma_M1, Range{1.0, 3.0}, defaulted);
            field(Name{"gamma-M2", "gamma_M2", "partial factor on rupture"}, self.gamma_M2, Range{1.0, 3.0}, defaulted);
            field(Name{"method", "", "code of practice"}, self.method, defaulted);
        }
    };

    struct Answer {
        Force resistance;
        Force tension_part;  ///< of the torn face
        Force shear_part;    ///< of the sheared faces
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"resistance", "V_eff_Rd", "design resistance against block tearing"}, self.resistance);
            field(Name{"tension-part", "V_nt", "part of the torn face"}, self.tension_part);
            field(Name{"shear-part", "V_nv", "part of the sheared faces"}, self.shear_part);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.yield_strength > in.ultimate_strength) return "the yield strength is above the ultimate strength";
        const bool american = in.method == DesignMethod::adm || in.method == DesignMethod::as_4100;
        if (american && !in.gross_shear_area) return "this method needs the gross area of the sheared faces";
        if (in.gross_shear_area && *in.gross_shear_area < in.net_shear_area) return "the net shear area is greater than the gross";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [A_nt, A_nv, A_gv, f_y, f_u, pull, gamma_M0, gamma_M1, gamma_M2, method] = in;
        FAYWRIGHT_STATED(U, "share of the torn face: 1 concentric, 0.5 eccentric", pull == BlockPull::concentric ? 1.0 : 0.5);
        switch (method) {
            case DesignMethod::en_1993: {
                FAYWRIGHT_STEP(V_nt, U * f_u * A_nt / gamma_M2);
                FAYWRIGHT_STEP(V_nv, f_y / sqrt(3.0) * A_nv / gamma_M0);
                FAYWRIGHT_STEP(V_eff_Rd, V_nt + V_nv);
                return {V_eff_Rd, V_nt, V_nv};
            }
            case DesignMethod::en_1999: {
                FAYWRIGHT_STEP(V_nt, U * f_u * A_nt / gamma_M2);
                FAYWRIGHT_STEP(V_nv, f_y / sqrt(3.0) * A_nv / gamma_M1);
                FAYWRIGHT_STEP(V_eff_Rd, V_nt + V_nv);
                return {V_eff_Rd, V_nt, V_nv};
            }
            case DesignMethod::adm:
            case DesignMethod::as_4100: {
                FAYWRIGHT_STEP(V_nt, 0.75 * U * f_u * A_nt);
                if (!A_gv) {
                    FAYWRIGHT_STEP(V_nv, 0.75 * min(0.6 * f_u * A_nv, 0.6 * f_y * A_nv));
                    FAYWRIGHT_STEP(V_eff_Rd, V_nt + V_nv);
                    return {V_eff_Rd, V_nt, V_nv, "gross shear area not given, net taken"};
                }
                FAYWRIGHT_STEP(V_nv, 0.75 * min(0.6 * f_u * A_nv, 0.6 * f_y * *A_gv));
                FAYWRIGHT_STEP(V_eff_Rd, V_nt + V_nv);
                return {V_eff_Rd, V_nt, V_nv};
            }
        }
        return {};
    }
};

}  // namespace faywright
