// SPDX-License-Identifier: MIT
#include "report/uncertainty.hpp"

#include "report/assessment.hpp"
#include "report/assessment_document.hpp"

namespace faywright {

namespace {

using json::Json;

Json ranking_json(const Uncertainty& u, const ResponseTold& r) {
    Json out;
    out["method"] = ranking_method;
    out["explained"] = r.ranking.explained;
    out["shares"] = Json::object();
    for (std::size_t i = 0; i < r.ranking.shares.size(); ++i) out["shares"][std::string(u.inputs[i].info->id)] = r.ranking.shares[i];
    return out;
}

Json event_json(const EventTold& event) {
    Json out{{"id", event.info->id}, {"title", event.info->title}};
    if (event.barred != nullptr) {
        out["not_counted"] = event.barred;
        return out;
    }
    const auto& p = event.proportion;
    out["happened"] = p.happened;
    if (p.samples == 0) return out;
    out["probability"] = p.estimate();
    out["interval"] = {{"confidence", 0.95}, {"low", p.low()}, {"high", p.high()}};
    return out;
}

Json response_json(const Uncertainty& u, const ResponseTold& r) {
    Json out{{"id", r.info->id}, {"title", r.info->title}};
    if (r.barred != nullptr) {
        out["not_counted"] = r.barred;
        return out;
    }
    out["mean"] = json::of(r.mean);
    out["standard_deviation"] = json::of(r.deviation, r.mean);
    out["quantiles"] = {{"0.05", json::of(r.low, r.mean)}, {"0.50", json::of(r.median, r.mean)}, {"0.95", json::of(r.high, r.mean)}};
    if (!r.ranking.shares.empty()) out["ranking"] = ranking_json(u, r);
    return out;
}

Json input_json(const InputTold& input) {
    const char* second = input.shape == Shape::uniform ? "greatest" : input.shape == Shape::normal ? "standard_deviation" : "log_deviation";
    const char* first = input.shape == Shape::uniform ? "least" : input.shape == Shape::normal ? "mean" : "median";
    return {{"id", input.info->id},           {"title", input.info->title},     {"distribution", word_of(input.shape)},
            {first, json::of(input.first)},   {second, json::of(input.second)}, {"basis", word(input.info->basis)},
            {"from", input.info->basis_words}};
}

}  // namespace

std::string assessment_json(const Assessment& assessment, const Uncertainty& u) {
    Json out;
    out["samples"] = {{"wanted", u.wanted}, {"drawn", u.done}, {"complete", u.complete()}, {"seed", u.seed}};
    out["events"] = Json::array();
    for (const auto& event : u.events) out["events"].push_back(event_json(event));
    out["responses"] = Json::array();
    for (const auto& response : u.responses) out["responses"].push_back(response_json(u, response));
    out["inputs"] = Json::array();
    for (const auto& input : u.inputs) out["inputs"].push_back(input_json(input));
    out["notes"] = uncertainty_notes();
    auto document = assessment_document(assessment);
    document["uncertainty"] = std::move(out);
    return json::printed(document);
}

}  // namespace faywright
