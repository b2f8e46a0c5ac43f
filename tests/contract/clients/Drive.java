import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fitment.ApiClient;
import fitment.ApiException;
import fitment.api.DesignationsApi;
import fitment.api.FitmentsApi;
import fitment.api.TablesAndRulesApi;
import fitment.model.Assessment;
import fitment.model.Candidate;
import fitment.model.CheckRequest;
import fitment.model.CompareRequest;
import fitment.model.Comparison;
import fitment.model.Fault;
import fitment.model.Finding;
import fitment.model.OfferedRim;
import fitment.model.OfferedRims;
import fitment.model.PackSummary;
import fitment.model.Problem;
import fitment.model.SearchRequest;
import fitment.model.StockLine;
import fitment.model.TableName;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A fleet system in small: asks the service through a client made from its document, and says what it learnt. */
public final class Drive {
    private static final ObjectMapper JSON = ApiClient.createDefaultObjectMapper();
    private static final Map<String, Object> LEARNT = new LinkedHashMap<>();

    public static void main(String[] arguments) throws Exception {
        ApiClient client = new ApiClient().setObjectMapper(JSON);
        client.updateBaseUri(arguments[0]);
        FitmentsApi fitments = new FitmentsApi(client);
        check(fitments, arguments[1]);
        compare(fitments, arguments[1]);
        search(fitments, arguments[1]);
        LEARNT.put("packs", new TablesAndRulesApi(client).listRulePacks().getRulePacks().stream().map(PackSummary::getId).toList());
        LEARNT.put("load_index", new DesignationsApi(client).readTyreDesignation("205/55 R16 91V").getLoadIndex());
        LEARNT.put("table_rows", new TablesAndRulesApi(client).readTable(TableName.SPEED_SYMBOL).getRows().size());
        System.out.println(JSON.writeValueAsString(LEARNT));
    }

    private static CheckRequest question(String story) throws JsonProcessingException {
        return JSON.readValue(story, CheckRequest.class);
    }

    private static Candidate misspelt(String story) throws JsonProcessingException {
        Candidate candidate = question(story).getCandidate();
        candidate.getFront().getTyre().setSize("no tyre");
        return candidate;
    }

    private static void check(FitmentsApi fitments, String story) throws ApiException, JsonProcessingException {
        Assessment answer = fitments.checkFitment(question(story));
        Finding worst = answer.getFindings().get(0);
        LEARNT.put("verdict", answer.getVerdict());
        LEARNT.put("carried", worst.getParameters().get("carried").getValue());
        LEARNT.put("future", later(answer).getVerdict());
        LEARNT.put("worst", Arrays.asList(worst.getCode(), worst.getOutcome(), worst.getMeasured(), worst.getLimit()));
        try {
            fitments.checkFitment(question(story).candidate(misspelt(story)));
        } catch (ApiException error) {
            Problem problem = JSON.readValue(error.getResponseBody(), Problem.class);
            LEARNT.put("status", error.getCode());
            LEARNT.put("refused", problem.getErrors().stream().map(Drive::place).toList());
        }
    }

    /** What a later version may answer: a word and a member that this client does not know. */
    private static Assessment later(Assessment answer) throws JsonProcessingException {
        ObjectNode tree = JSON.valueToTree(answer);
        tree.put("verdict", "later").putObject("later").put("more", 1);
        return JSON.treeToValue(tree, Assessment.class);
    }

    private static List<Object> place(Fault fault) {
        return Arrays.asList(fault.getPointer(), fault.getCode(), fault.getPosition());
    }

    private static void compare(FitmentsApi fitments, String story) throws ApiException, JsonProcessingException {
        CheckRequest asked = question(story);
        CompareRequest many = new CompareRequest().vehicle(asked.getVehicle()).rulePack(asked.getRulePack());
        Comparison answer = fitments.compareFitments(many.candidates(List.of(asked.getCandidate(), misspelt(story))));
        LEARNT.put("rows", answer.getRows().stream().map(row -> row.getVerdict()).toList());
        LEARNT.put("refused_rows", answer.getRefused().stream().map(row -> List.of(row.getIndex(), row.getErrors().get(0).getPointer())).toList());
    }

    private static void search(FitmentsApi fitments, String story) throws ApiException, JsonProcessingException {
        CheckRequest asked = question(story);
        OfferedRim rim = JSON.convertValue(asked.getCandidate().getFront().getRim(), OfferedRim.class);
        SearchRequest offer = new SearchRequest().vehicle(asked.getVehicle()).rulePack(asked.getRulePack());
        offer.rims(new OfferedRims().addFrontItem(rim));
        offer.addStockItem(new StockLine().size("205/55 R16 94W XL")).addStockItem(new StockLine().size("205/55 R16 91V"));
        LEARNT.put("found", fitments.searchFitments(offer).getRows().stream().map(row -> row.getFitment().getFront().getTyre()).toList());
    }
}
